package io.github.tiderule.engine.season;

import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import org.jspecify.annotations.Nullable;

/** How far a season may be talked about; it is asked once, and every later stage holds it. */
public sealed interface Standing {

  Read read();

  /** When she ovulates; null where nothing dates the season. */
  @Nullable Dated dated();

  /** A season whose days may be planned. */
  record Open(Dated dated) implements Standing {

    @Override
    public Read read() {
      return dated.read();
    }
  }

  /** It stopped before the surge: no day of it is planned, and the true season is waited for. */
  record BrokenOff(Read read, @Nullable Dated dated) implements Standing {}

  /** Nothing dates it yet, and nothing else stands in the way. */
  record NotDated(Read read) implements Standing {

    @Override
    public @Nullable Dated dated() {
      return null;
    }
  }

  /** Only a vet can time it: no day is planned, and none is counted from ovulation. */
  record ForVet(Read read, @Nullable Dated dated) implements Standing {}

  /** An emergency, or something as grave, ends all talk of timing; facts stay. */
  record Stopped(Read read, @Nullable Dated dated) implements Standing {}

  /**
   * Where a season stands.
   *
   * @param safety the stage whose cautions may stop the talk
   */
  static Standing of(Read read, @Nullable Dated dated, StageRun safety) {
    if (safety.all(Caution.class).stream().anyMatch(one -> one.level() == CautionLevel.STOP)) {
      return new Stopped(read, dated);
    }
    if (read.vetOnly() || safety.all(Caution.class).stream().anyMatch(Standing::first)) {
      return new ForVet(read, dated);
    }
    if (read.brokenOff()) {
      return new BrokenOff(read, dated);
    }
    return dated == null ? new NotDated(read) : new Open(dated);
  }

  /** Whether a caution comes before every plan. */
  private static boolean first(Caution one) {
    return one.about() == About.TOO_YOUNG || one.about() == About.AFTER_WHELPING;
  }

  default Season season() {
    return read().season();
  }

  /** Whether nothing of days is told: of breeding, of semen, of a caesarean. */
  default boolean silent() {
    return this instanceof Stopped || this instanceof ForVet;
  }
}
