package io.github.tiderule.cases.cohort;

import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Smear;

/** Somebody who reads smears: counts to the nearest five, with an error, and sometimes blunders. */
public final class SmearReader {

  private static final double READING_SD = 10;
  private static final double BLUNDER = 0.03;

  private SmearReader() {}

  public static Smear read(String id, double day, Bitch bitch, Draws draws) {
    return read(id, day, bitch.cornifiedAt(day), bitch.inDioestrusAt(day), draws);
  }

  /**
   * What is counted in a smear.
   *
   * @param cornified true share of cornified cells, per cent
   * @param turned whether she is in dioestrus
   */
  public static Smear read(String id, double day, double cornified, boolean turned, Draws draws) {
    double seen = cornified + draws.normal(0, READING_SD);
    if (draws.chance(BLUNDER)) {
      seen = draws.uniform(0, 100);
    }
    double counted = 5.0 * Math.round(Math.min(Math.max(seen, 0), 100) / 5);
    return new Smear(id, Calendar.instant(day), counted, neutrophils(cornified, turned, draws));
  }

  private static Neutrophils neutrophils(double cornified, boolean turned, Draws draws) {
    int which =
        turned
            ? draws.pick(0.1, 0.3, 0.6)
            : cornified > 70 ? draws.pick(0.85, 0.12, 0.03) : draws.pick(0.4, 0.4, 0.2);
    return switch (which) {
      case 0 -> Neutrophils.NONE;
      case 1 -> Neutrophils.FEW;
      default -> Neutrophils.MANY;
    };
  }
}
