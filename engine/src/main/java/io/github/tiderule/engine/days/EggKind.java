package io.github.tiderule.engine.days;

import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.List;

/**
 * A kind of egg: eggs that ripen at about the same time after ovulation and live about as long.
 *
 * @param weight share of her eggs that are of this kind; those of all kinds sum to 1
 * @param school when thawed sperm is taken to find it ready
 * @param view how long it is taken to live
 * @param ripe mean of the time from the middle of ovulation to the ripe egg, days
 * @param ripeSd spread of that within the kind, days
 * @param opens days from the ripe egg until sperm can fertilise it
 * @param life median of the time for which the ripe egg can be fertilised, days
 * @param lifeLogSd spread of the log of that within the kind
 */
public record EggKind(
    double weight,
    School school,
    View view,
    double ripe,
    double ripeSd,
    double opens,
    double life,
    double lifeLogSd) {

  /** Two schools on when thawed sperm finds the egg ready. */
  public enum School {
    /** As soon as it is ripe under the microscope. */
    EARLY,
    /** Later, as inseminations with frozen semen on known days turned out. */
    LATE
  }

  /** Two views of how long the ripe egg can be fertilised. */
  public enum View {
    /** About two days. */
    SHORT,
    /** Three days, some four to five. */
    LONG
  }

  /** Part of a normal spread that is left within each of the kinds it is cut into. */
  private static final double WITHIN = 0.5;

  private static final double[] FIVE = {-1.6, -0.8, 0, 0.8, 1.6};
  private static final double[] THREE = {-1.2, 0, 1.2};

  /**
   * The kinds that stand for all eggs.
   *
   * @param bothSchools whether the late school has a say, as for frozen semen; kinds then come
   *     school by school, each in the same order as without
   */
  static List<EggKind> all(Parameters parameters, boolean bothSchools) {
    double late = bothSchools ? parameters.value("eggs.frozen-late-weight") : 0;
    List<EggKind> kinds = new ArrayList<>(school(parameters, School.EARLY, 1 - late));
    if (late > 0) {
      kinds.addAll(school(parameters, School.LATE, late));
    }
    return List.copyOf(kinds);
  }

  private static List<EggKind> school(Parameters parameters, School school, double weight) {
    double sd =
        Math.hypot(parameters.value("eggs.spread-sd"), parameters.value("eggs.ripening-sd"));
    double opens = school == School.LATE ? parameters.value("eggs.frozen-late-wait") : 0;
    double mean = parameters.value("eggs.ripening-mean");
    double longLived = parameters.value("eggs.life-long-weight");
    double shortLife = parameters.value("eggs.life-short");
    double shortLogSd = parameters.value("eggs.life-short-log-sd");
    double longLife = parameters.value("eggs.life-long");
    double longLogSd = parameters.value("eggs.life-long-log-sd");
    double[] ripeWeight = weights(FIVE);
    double[] lifeWeight = weights(THREE);
    List<EggKind> kinds = new ArrayList<>();
    for (int r = 0; r < FIVE.length; r++) {
      double ripe = mean + sd * FIVE[r];
      double part = weight * ripeWeight[r];
      kinds.add(
          new EggKind(
              part * (1 - longLived),
              school,
              View.SHORT,
              ripe,
              sd * WITHIN,
              opens,
              shortLife,
              shortLogSd));
      for (int f = 0; f < THREE.length; f++) {
        kinds.add(
            new EggKind(
                part * longLived * lifeWeight[f],
                school,
                View.LONG,
                ripe,
                sd * WITHIN,
                opens,
                longLife * Math.exp(longLogSd * THREE[f]),
                longLogSd * WITHIN));
      }
    }
    return kinds;
  }

  /** Weights in proportion to a normal density of the variance that is not within the kinds. */
  private static double[] weights(double[] points) {
    double[] weights = new double[points.length];
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      weights[i] = Math.exp(-points[i] * points[i] / (2 * (1 - WITHIN * WITHIN)));
      sum += weights[i];
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= sum;
    }
    return weights;
  }
}
