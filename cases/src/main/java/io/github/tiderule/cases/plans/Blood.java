package io.github.tiderule.cases.plans;

import io.github.tiderule.cases.cohort.Bitch;
import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.cases.cohort.Draws;
import io.github.tiderule.cases.cohort.Laboratory;
import io.github.tiderule.cases.cohort.Season;
import io.github.tiderule.cases.cohort.SmearReader;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.util.ArrayList;
import java.util.List;

/**
 * A female's tests at one laboratory. A sample of one hour has one result, whoever asks for it, so
 * that all habits are compared on the same blood.
 */
final class Blood {

  private static final int FIRST_DAY = 5;
  private static final int LAST_DAY = 40;
  private static final double USUAL_HOUR = 8.5 / 24;

  /** An LH test beside a lower progesterone is taken for a burst before the surge. */
  private static final double BORNE_OUT = 1;

  private static final long LARGEST_COHORT = 1_000_000;

  private final Bitch bitch;
  private final long seed;
  private final Laboratory laboratory;

  Blood(Bitch bitch, long seed) {
    this.bitch = bitch;
    this.seed = seed;
    laboratory = Laboratory.any("A", Draws.of(seed + 1, bitch.number()));
  }

  Bitch bitch() {
    return bitch;
  }

  private Draws noise(double day) {
    return Draws.of(seed + 2, bitch.number() + LARGEST_COHORT * Math.round(day * 24));
  }

  Progesterone progesterone(double day) {
    return laboratory.measure("p" + Math.round(day * 24), day, bitch, noise(day));
  }

  /** A test of a kind, as advice names it. */
  Observation test(TestKind kind, double day) {
    long hour = Math.round(day * 24);
    return switch (kind) {
      case LH -> new LhTest("l" + hour, Calendar.instant(day), bitch.lhHighAt(day));
      case CYTOLOGY -> SmearReader.read("c" + hour, day, bitch, noise(day));
      default -> progesterone(day);
    };
  }

  /**
   * Testing every second day from day 5 after the noted first blood.
   *
   * @param pastFive day of the drawing whose value is the first above 5; infinite for never
   * @param lhSeen day of the first of these drawings with LH high and progesterone above 1;
   *     infinite for none
   * @param untilPastFive how many tests that took
   * @param untilProven how many tests it takes to a proven rise
   */
  record EverySecondDay(double pastFive, double lhSeen, int untilPastFive, int untilProven) {}

  EverySecondDay everySecondDay() {
    List<Observation> seen = new ArrayList<>();
    double pastFive = Double.POSITIVE_INFINITY;
    double lhSeen = Double.POSITIVE_INFINITY;
    int untilPastFive = 0;
    for (int after = FIRST_DAY; after <= LAST_DAY; after += 2) {
      double day = bitch.noticedAfter() + after + USUAL_HOUR;
      Progesterone value = progesterone(day);
      seen.add(value);
      lhSeen =
          Double.isInfinite(lhSeen) && bitch.lhHighAt(day) && Season.past(value, BORNE_OUT)
              ? day
              : lhSeen;
      if (Double.isInfinite(pastFive)) {
        untilPastFive++;
        pastFive = Season.past(value, 5) ? day : pastFive;
      }
      if (Season.proven(seen)) {
        break;
      }
    }
    return new EverySecondDay(pastFive, lhSeen, untilPastFive, seen.size());
  }
}
