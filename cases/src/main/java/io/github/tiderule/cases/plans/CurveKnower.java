package io.github.tiderule.cases.plans;

import io.github.tiderule.cases.cohort.Bitch;
import io.github.tiderule.cases.cohort.CurveOracle;
import java.util.List;

/**
 * The best single dose of one who knows each female's whole progesterone curve without error, the
 * laws the females are drawn by, and the law of the eggs, but not her ovulation. No planner that
 * tests progesterone alone can do better.
 */
final class CurveKnower {

  private static final int PER_DAY = 24;
  private static final int REACH = 16 * PER_DAY;
  private static final int SEASON = 40 * PER_DAY;
  private static final double[] HOURS = {10, 17};
  private static final double COURIER_AGE_HOURS = 27;

  private final double[] share = new double[2 * REACH + 1];
  private final boolean chilled;

  /**
   * @param row one with a single dose
   */
  CurveKnower(EggLaw law, Row row) {
    chilled = row == Row.CHILLED_ONE;
    for (int i = 0; i < share.length; i++) {
      double after = (i - REACH) / (double) PER_DAY;
      share[i] = law.share(row, List.of(new Given(after, COURIER_AGE_HOURS)), 0);
    }
  }

  /** Share of her eggs met by the dose that meets most as far as the curve can tell. */
  double share(Bitch bitch) {
    double[] weight = new double[SEASON];
    for (int i = 0; i < SEASON; i++) {
      weight[i] = CurveOracle.weight(bitch, i / (double) PER_DAY);
    }
    double most = -1;
    int best = 0;
    for (int day = 0; day < SEASON / PER_DAY; day++) {
      for (double hour : HOURS) {
        if (chilled && hour == HOURS[0]) {
          continue;
        }
        int given = (int) (day * PER_DAY + hour * PER_DAY / 24);
        double sum = 0;
        for (int i = 0; i < SEASON; i++) {
          sum += weight[i] * at(given - i);
        }
        if (sum > most) {
          most = sum;
          best = given;
        }
      }
    }
    return at((int) Math.round(best - bitch.ovulation() * PER_DAY));
  }

  private double at(int after) {
    return Math.abs(after) > REACH ? 0 : share[after + REACH];
  }
}
