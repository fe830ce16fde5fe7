package io.github.tiderule.cases.odd;

import io.github.tiderule.cases.plans.EggLaw;
import io.github.tiderule.cases.plans.Given;
import io.github.tiderule.cases.plans.Row;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What share of her eggs one dose meets, and the best that one still to come can meet. */
final class Eggs {

  private static final double FROM = -12;
  private static final double STEP = 0.1;
  private static final int STEPS = 240;

  /** Age of chilled semen when it can first be given, hours. */
  private static final double AGE_HOURS = 24;

  private final Map<Row, double[]> shares = new EnumMap<>(Row.class);

  Eggs(long seed) {
    EggLaw law = EggLaw.of(seed, EggLaw.World.MIXED);
    for (Row row : List.of(Row.NATURAL, Row.CHILLED_ONE, Row.FROZEN_ONE)) {
      double[] share = new double[STEPS];
      for (int i = 0; i < STEPS; i++) {
        share[i] = law.share(row, List.of(new Given(FROM + STEP * i, AGE_HOURS)), 0);
      }
      shares.put(row, share);
    }
  }

  /** Share one dose meets so many days after ovulation; 0 where she does not ovulate. */
  double share(Row row, double after) {
    if (Double.isInfinite(after)) {
      return 0;
    }
    int i = (int) Math.round((after - FROM) / STEP);
    return i < 0 || i >= STEPS ? 0 : of(row)[i];
  }

  /** The best share that a dose meets from so many days after ovulation on. */
  double best(Row row, double after) {
    if (Double.isInfinite(after)) {
      return 0;
    }
    int from = (int) Math.min(Math.max(Math.ceil((after - FROM) / STEP), 0), STEPS);
    double best = 0;
    for (int i = from; i < STEPS; i++) {
      best = Math.max(best, of(row)[i]);
    }
    return best;
  }

  private double[] of(Row row) {
    double[] share = shares.get(row);
    if (share == null) {
      throw new IllegalArgumentException("no shares of " + row);
    }
    return share;
  }
}
