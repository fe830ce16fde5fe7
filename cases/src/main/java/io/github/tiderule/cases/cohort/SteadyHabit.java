package io.github.tiderule.cases.cohort;

import io.github.tiderule.rules.fact.observation.Observation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Every so many days from about day 6 until the rise is proven, at most to day 35.
 *
 * @param every days between tests
 * @param smears whether each visit takes a smear too
 * @param laboratories how many laboratories take turns at random: 1 or 2, of different methods
 */
record SteadyHabit(int every, boolean smears, int laboratories) implements SamplingHabit {

  private static final int LAST_DAY = 35;

  @Override
  public String words() {
    String often = every == 1 ? "every day" : every == 2 ? "every 2nd day" : "every 3rd day";
    return often
        + (smears ? ", smears" : "")
        + (laboratories == 1 ? ", one laboratory" : ", two laboratories");
  }

  @Override
  public Optional<Season> sample(Bitch bitch, Draws draws) {
    Laboratory first =
        laboratories == 1 ? Laboratory.any("A", draws) : Laboratory.eclia("A", draws);
    Laboratory second = laboratories == 1 ? first : Laboratory.pointOfCare("B", draws);
    List<Observation> seen = new ArrayList<>();
    int start = bitch.noticedAfter() + 5 + draws.pick(1 / 3.0, 1 / 3.0, 1 / 3.0);
    for (int day = start; day <= LAST_DAY && !Season.proven(seen); day += every) {
      Laboratory laboratory = draws.chance(0.5) ? first : second;
      visit(seen, day, laboratory, smears, bitch, draws);
    }
    return Optional.of(new Season(bitch, true, seen));
  }

  /** One visit in the morning. */
  static void visit(
      List<Observation> seen,
      int day,
      Laboratory laboratory,
      boolean smear,
      Bitch bitch,
      Draws draws) {
    double drawn = day + 8.5 / 24 + draws.uniform(-1.5, 1.5) / 24;
    seen.add(laboratory.measure("p" + seen.size(), drawn, bitch, draws));
    if (smear) {
      seen.add(SmearReader.read("c" + seen.size(), drawn, bitch, draws));
    }
  }
}
