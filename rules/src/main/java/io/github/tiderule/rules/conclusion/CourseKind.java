package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.fact.Worded;

/** What the values of a season do, the most pressing first. */
public enum CourseKind implements Worded {
  /** From the ovulation level back to base. */
  FELL_BACK("fell-back"),
  /** Days after the ovulation level below it again. */
  FALLING_LATE("falling-late"),
  /** It fell by more than the noise of the test. */
  FALLING("falling"),
  /** One value fits none of the others. */
  ODD_VALUE("odd-value"),
  /** Signs of a season come weeks after this one stopped. */
  SHOWS_AGAIN("shows-again"),
  /** The season stopped before the surge. */
  BROKEN_OFF("broken-off"),
  /** Everything together says that she does not ovulate. */
  NOT_OVULATING("not-ovulating"),
  /** All values together follow no known course. */
  FITS_NOTHING("fits-nothing"),
  /** No longer rising, at the level of ovulation. */
  STANDING_STILL("standing-still"),
  /** It rises after standing still. */
  RISING_AGAIN("rising-again"),
  /** It stands still at the level of the surge, as it may before one. */
  PAUSE("pause"),
  /** An LH test caught an early burst. */
  EARLY_LH("early-lh"),
  /** Weeks into the season and not risen. */
  NO_RISE("no-rise"),
  SLOW("slow"),
  /** It has risen, and no later value bears that out yet. */
  UNCONFIRMED("unconfirmed"),
  FAST("fast"),
  RISING("rising"),
  /** Well past the level of ovulation. */
  RISEN("risen"),
  /** The first value is already high. */
  ALREADY_HIGH("already-high"),
  AT_BASE("at-base");

  private final String word;

  CourseKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
