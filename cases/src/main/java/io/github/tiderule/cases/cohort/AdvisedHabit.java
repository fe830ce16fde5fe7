package io.github.tiderule.cases.cohort;

import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * As the trade advises: from day 5 to 7 on; below 1 ng/mL every 3 to 4 days, from 1 to 2 every 2 to
 * 3 days, from 2 daily until the rise is proven (common practice). One laboratory.
 *
 * @param smears whether each visit takes a smear too
 * @param until when the engine is asked
 */
record AdvisedHabit(boolean smears, Until until) implements SamplingHabit {

  private static final int LAST_DAY = 35;

  /** When the engine is asked. */
  enum Until {
    FIRST_ABOVE_TWO("at the first value above 2"),
    PROVEN("after a proven rise");

    private final String words;

    Until(String words) {
      this.words = words;
    }
  }

  @Override
  public String words() {
    return "as advised" + (smears ? ", smears" : "") + ", " + until.words;
  }

  /** Seasons that never come so far are left out: the question is what holds once they do. */
  @Override
  public Optional<Season> sample(Bitch bitch, Draws draws) {
    Laboratory laboratory = Laboratory.any("A", draws);
    List<Observation> seen = new ArrayList<>();
    int day = bitch.noticedAfter() + 5 + draws.pick(1 / 3.0, 1 / 3.0, 1 / 3.0);
    while (day <= LAST_DAY) {
      SteadyHabit.visit(seen, day, laboratory, smears, bitch, draws);
      Progesterone last = latest(seen);
      if (until == Until.FIRST_ABOVE_TWO ? Season.past(last, 2) : Season.proven(seen)) {
        return Optional.of(new Season(bitch, true, seen));
      }
      int late = draws.pick(0.5, 0.5);
      day += Season.past(last, 2) ? 1 : Season.past(last, 1) ? 2 + late : 3 + late;
    }
    return Optional.empty();
  }

  private static Progesterone latest(List<Observation> seen) {
    Progesterone latest = null;
    for (Observation observation : seen) {
      if (observation instanceof Progesterone p) {
        latest = p;
      }
    }
    if (latest == null) {
      throw new IllegalStateException("a visit without a progesterone");
    }
    return latest;
  }
}
