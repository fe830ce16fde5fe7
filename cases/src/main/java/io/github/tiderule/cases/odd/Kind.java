package io.github.tiderule.cases.odd;

/** The ways in which a season leaves the textbook, and the ordinary one. */
public enum Kind {
  ORDINARY("ordinary"),
  PLATEAU_LOW("stands still at 2 to 4"),
  PLATEAU_HIGH("stands still at 4 to 7.5"),
  BROKEN_ONE_FILE("broken off, all in one file"),
  BROKEN_RISE_ONE_FILE("broken off after a small rise, all in one file"),
  BROKEN_NEW_BLOOD("broken off, then a new first blood"),
  BROKEN_RISE_NEW_BLOOD("broken off after a small rise, then a new first blood"),
  RISE_FALLS("rises, falls again, no ovulation"),
  NO_OVULATION("stays low, no ovulation"),
  SLOW("slow"),
  FAST("fast"),
  ODD_VALUE("one grossly odd value"),
  TWO_ODD_VALUES("two grossly odd values"),
  LIMIT_AFTER_RISE("a limit or zero after a rise"),
  NG_TYPED_AS_NMOL("one value in ng typed as nmol"),
  NMOL_TYPED_AS_NG("one value in nmol typed as ng"),
  MOVED_POINT("one decimal point moved"),
  BLOOD_MONTH("first blood typed a month off"),
  BLOOD_YEAR("first blood typed a year off"),
  BLOOD_EXCHANGED("first blood, day and month exchanged"),
  EARLY_BURST("early LH burst"),
  LUTEAL_FAILURE("bred, then progesterone falls"),
  LATE_WITH_SMEARS("first seen after ovulation, smears"),
  LATE_WITHOUT_SMEARS("first seen after ovulation, no smears");

  private final String words;

  Kind(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  /** Whether the first season stops before ovulation and another follows. */
  boolean brokenOff() {
    return this == BROKEN_ONE_FILE
        || this == BROKEN_RISE_ONE_FILE
        || this == BROKEN_NEW_BLOOD
        || this == BROKEN_RISE_NEW_BLOOD;
  }

  /** Whether the keeper enters a new first blood for the true season after a broken one. */
  boolean newBlood() {
    return this == BROKEN_NEW_BLOOD || this == BROKEN_RISE_NEW_BLOOD;
  }

  boolean late() {
    return this == LATE_WITH_SMEARS || this == LATE_WITHOUT_SMEARS;
  }

  /** Whether one value or more is not what was measured in her. */
  boolean slippedValue() {
    return switch (this) {
      case ODD_VALUE,
          TWO_ODD_VALUES,
          LIMIT_AFTER_RISE,
          NG_TYPED_AS_NMOL,
          NMOL_TYPED_AS_NG,
          MOVED_POINT ->
          true;
      default -> false;
    };
  }

  /** Whether first blood is not typed as it was noted. */
  boolean slippedBlood() {
    return this == BLOOD_MONTH || this == BLOOD_YEAR || this == BLOOD_EXCHANGED;
  }
}
