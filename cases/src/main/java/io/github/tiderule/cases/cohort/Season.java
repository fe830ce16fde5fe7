package io.github.tiderule.cases.cohort;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What somebody knows of a female's season.
 *
 * @param onsetKnown whether the day of first blood was noted
 * @param observations in time order
 */
public record Season(Bitch bitch, boolean onsetKnown, List<Observation> observations) {

  /** Hours from the last drawing to the question. */
  private static final double LATER = 8 / 24.0;

  public Season {
    observations = List.copyOf(observations);
  }

  /** The record handed to the engine some hours after the last observation. */
  CycleRecord cycle() {
    Observation last = observations.get(observations.size() - 1);
    return CycleRecord.on(Calendar.instant(Calendar.day(last.at()) + LATER), Calendar.ZONE)
        .firstBlood(
            onsetKnown
                ? FirstBlood.seen(Calendar.FIRST_DAY.plusDays(bitch.noticedAfter()))
                : FirstBlood.unknown())
        .addAll(observations)
        .build();
  }

  /** Rule of thumb: ovulation at noon of day 12 after the day first blood was noted. */
  OptionalDouble dayTwelve() {
    return onsetKnown ? OptionalDouble.of(bitch.noticedAfter() + 12.5) : OptionalDouble.empty();
  }

  /** Rule of thumb: ovulation when a value first passes 5 ng/mL, whoever measured it. */
  OptionalDouble firstPastFive() {
    return observations.stream()
        .filter(o -> o instanceof Progesterone p && past(p, 5))
        .mapToDouble(o -> Calendar.day(o.at()))
        .findFirst();
  }

  /** Whether a printed value lies above a level; one below the range never does. */
  public static boolean past(Progesterone p, double level) {
    return p.comparator() != Comparator.BELOW && p.value() > level;
  }

  /**
   * Whether a rise is proven: a value above 8 ng/mL and at least 1.5 times an earlier one of the
   * same series that was already above 2.
   */
  public static boolean proven(List<Observation> observations) {
    for (int i = 0; i < observations.size(); i++) {
      for (int j = i + 1; j < observations.size(); j++) {
        if (observations.get(i) instanceof Progesterone a
            && observations.get(j) instanceof Progesterone b
            && a.series().equals(b.series())
            && past(b, 8)
            && past(a, 2)
            && b.value() >= 1.5 * a.value()) {
          return true;
        }
      }
    }
    return false;
  }
}
