package io.github.tiderule.cases.cohort;

import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Smear;

/** Somebody who reads smears: counts to the nearest five, with an error, and sometimes blunders. */
public final class SmearReader {

  private static final double READING_SD = 10;
  private static final double BLUNDER = 0.03;

  private SmearReader() {}

  public static Smear read(String id, double day, Bitch bitch, Draws draws) {
    double seen = bitch.cornifiedAt(day) + draws.normal(0, READING_SD);
    if (draws.chance(BLUNDER)) {
      seen = draws.uniform(0, 100);
    }
    double counted = 5.0 * Math.round(Math.min(Math.max(seen, 0), 100) / 5);
    return new Smear(id, Calendar.instant(day), counted, neutrophils(day, bitch, draws));
  }

  private static Neutrophils neutrophils(double day, Bitch bitch, Draws draws) {
    int which =
        bitch.inDioestrusAt(day)
            ? draws.pick(0.1, 0.3, 0.6)
            : bitch.cornifiedAt(day) > 70
                ? draws.pick(0.85, 0.12, 0.03)
                : draws.pick(0.4, 0.4, 0.2);
    return switch (which) {
      case 0 -> Neutrophils.NONE;
      case 1 -> Neutrophils.FEW;
      default -> Neutrophils.MANY;
    };
  }
}
