package io.github.tiderule.engine.days;

import io.github.tiderule.rules.fact.Route;
import io.github.tiderule.rules.fact.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Which share of her eggs one dose meets, by how long after ovulation it is given.
 *
 * <p>An egg is shed, ripens, and can then be fertilised for some days; a dose becomes able to
 * fertilise after some hours and lives for a time that is log-normal. They meet when some of the
 * one time falls into the other. Eggs of one season differ in when they are shed and ripen and in
 * how long they live: they are stood for by weighted kinds. Each further day in the box uses up
 * chilled semen as a day in the female would, and some of it is dead on arrival. For frozen semen
 * two schools place the ripe egg about a day apart; both are kept, half and half.
 *
 * <p>Semen left in the vagina no longer arrives once the cervix has closed. Figures: scope {@code
 * eggs} of the parameters. Safe for use by many threads.
 */
public final class EggModel {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  /** Standard-normal points that stand for a spread, with their weights. */
  private static final double[] POINTS = {-1.8, -0.9, 0, 0.9, 1.8};

  /** Softens the edges between the few points, days. */
  private static final double SOFT = 0.15;

  private final Parameters parameters;
  private final Map<Kind, Meeting> meetings = new ConcurrentHashMap<>();

  private record Kind(Semen semen, boolean intoUterus, int ageHours) {}

  public EggModel(Parameters parameters) {
    this.parameters = parameters;
  }

  /**
   * The share of eggs met by doses of one kind. Into the uterus is one kind, by whatever route.
   *
   * @param ageHours age of chilled semen at use, hours; of no matter for other semen
   */
  public Meeting meeting(Semen semen, Route route, double ageHours) {
    boolean intoUterus = route == Route.TRANSCERVICAL || route == Route.SURGICAL;
    int age = semen == Semen.CHILLED ? (int) Math.min(Math.max(Math.round(ageHours), 0), 240) : 0;
    return meetings.computeIfAbsent(new Kind(semen, intoUterus, age), this::tabulate);
  }

  private double value(String name) {
    return parameters.value("eggs." + name);
  }

  private Meeting tabulate(Kind kind) {
    LogNormalDistribution life = life(kind);
    double spent = spent(kind);
    double[] weights = pointWeights();
    double apart = kind.semen() == Semen.FROZEN ? value("frozen-schools-apart") / 2 : 0;
    double[] schools = apart > 0 ? new double[] {-apart, apart} : new double[] {0};
    double ripeSd = Math.hypot(value("spread-sd"), value("ripening-sd"));
    int eggs = schools.length * POINTS.length * POINTS.length;
    double[] eggWeight = new double[eggs];
    double[][] met = new double[eggs][Meeting.SIZE];
    int egg = 0;
    for (double school : schools) {
      for (int r = 0; r < POINTS.length; r++) {
        double ripe = value("ripening-mean") + school + ripeSd * POINTS[r];
        for (int f = 0; f < POINTS.length; f++) {
          double span = value("life-median") * Math.exp(value("life-log-sd") * POINTS[f]);
          eggWeight[egg] = weights[r] * weights[f] / schools.length;
          for (int i = 0; i < Meeting.SIZE; i++) {
            double given = Meeting.dayAt(i);
            double inTime = cdf((ripe + span - value("sperm-ready") - given) / SOFT);
            double age = spent + Math.max(0, ripe - given);
            double alive = age > 0 ? life.survivalProbability(age) : 1;
            met[egg][i] = inTime * alive * open(kind, given);
          }
          egg++;
        }
      }
    }
    return new Meeting(eggWeight, met);
  }

  private double open(Kind kind, double given) {
    return kind.intoUterus() ? 1 : 1 - probabilityClosed(given);
  }

  /** Probability that the cervix has closed to vaginal semen some days after ovulation. */
  public double probabilityClosed(double daysAfterOvulation) {
    return cdf((daysAfterOvulation - value("closed-after")) / value("closed-sd"));
  }

  private LogNormalDistribution life(Kind kind) {
    return switch (kind.semen()) {
      case NATURAL -> life(value("life.natural"), value("life.natural-log-sd"));
      case FRESH -> life(value("life.fresh"), value("life.natural-log-sd"));
      case FROZEN -> life(value("life.frozen"), value("life.frozen-log-sd"));
      case CHILLED -> life(value("life.chilled"), value("life.chilled-log-sd"));
    };
  }

  /** Days of its life that chilled semen has spent in the box beyond the first one. */
  private double spent(Kind kind) {
    return kind.semen() == Semen.CHILLED
        ? value("life.chilled-loss") * Math.max(0, kind.ageHours() / 24.0 - 1)
        : 0;
  }

  private static LogNormalDistribution life(double median, double logSd) {
    return LogNormalDistribution.of(Math.log(median), logSd);
  }

  private static double[] pointWeights() {
    double[] weights = new double[POINTS.length];
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      weights[i] = STANDARD.density(POINTS[i]);
      sum += weights[i];
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= sum;
    }
    return weights;
  }

  private static double cdf(double z) {
    return STANDARD.cumulativeProbability(z);
  }
}
