package io.github.tiderule.cases.cohort;

import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One visit on a day taken at random, kept only where the value falls into a band. She is brought
 * because she is in heat: not later than a day after the smear turns.
 *
 * @param from least value kept, ng/mL
 * @param to greatest value kept
 * @param onsetKnown whether the day of first blood was noted
 * @param smear whether the visit takes a smear too
 */
record OneValueHabit(double from, double to, boolean onsetKnown, boolean smear)
    implements SamplingHabit {

  private static final int EARLIEST = 4;
  private static final int LAST_DAY = 26;
  private static final double IN_HEAT = 1;

  @Override
  public String words() {
    return "one value "
        + (Double.isInfinite(to) ? "above " + (int) from : "from " + (int) from + " to " + (int) to)
        + (onsetKnown ? "" : ", onset unknown")
        + (smear ? ", smear" : "");
  }

  @Override
  public Optional<Season> sample(Bitch bitch, Draws draws) {
    Laboratory laboratory = Laboratory.any("A", draws);
    List<Observation> seen = new ArrayList<>();
    int day = (int) draws.uniform(EARLIEST, LAST_DAY + 1);
    SteadyHabit.visit(seen, day, laboratory, smear, bitch, draws);
    Progesterone value = (Progesterone) seen.get(0);
    boolean inHeat = day < bitch.dioestrus() + IN_HEAT;
    boolean kept = inHeat && Season.past(value, from) && value.value() <= to;
    return kept ? Optional.of(new Season(bitch, onsetKnown, seen)) : Optional.empty();
  }
}
