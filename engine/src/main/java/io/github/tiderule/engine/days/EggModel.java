package io.github.tiderule.engine.days;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Which share of her eggs one dose meets, by how long after ovulation it is given. The model is
 * written down on the package page. Safe for use by many threads.
 */
public final class EggModel {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  /** Nodes and weights of a five-point Gauss–Hermite rule for a standard normal variable. */
  private static final double[] NODES = {
    -2.856970013872806, -1.355626179974266, 0, 1.355626179974266, 2.856970013872806
  };

  private static final double[] NODE_WEIGHTS = {
    0.011257411327721, 0.222075922005613, 0.533333333333333, 0.222075922005613, 0.011257411327721
  };

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
    LogNormalDistribution sperm = spermLife(kind);
    double spent = spent(kind);
    double ready = value("sperm-ready");
    List<EggKind> eggs = EggKind.all(parameters, kind.semen() == Semen.FROZEN);
    double[][] met = new double[eggs.size()][Meeting.SIZE];
    for (int i = 0; i < Meeting.SIZE; i++) {
      double given = Meeting.dayAt(i);
      double arrives = kind.intoUterus() ? 1 : 1 - probabilityClosed(given);
      for (int e = 0; e < met.length; e++) {
        met[e][i] = arrives * meets(eggs.get(e), given, spent, ready, sperm);
      }
    }
    return new Meeting(eggs, met);
  }

  /** Mean over when the egg is ripe: sperm and egg both alive when the later of them is ready. */
  private static double meets(
      EggKind egg, double given, double spent, double ready, LogNormalDistribution sperm) {
    double sum = 0;
    for (int j = 0; j < NODES.length; j++) {
      double ripe = egg.ripe() + egg.ripeSd() * NODES[j];
      double age = spent + Math.max(0, ripe + egg.opens() - given);
      double eggWaits = Math.max(given + ready - ripe, egg.opens());
      double spermAlive = age > 0 ? sperm.survivalProbability(age) : 1;
      double eggAlive =
          eggWaits > 0 ? 1 - cdf(Math.log(eggWaits / egg.life()) / egg.lifeLogSd()) : 1;
      sum += NODE_WEIGHTS[j] * spermAlive * eggAlive;
    }
    return sum;
  }

  /** Probability that the cervix has closed to vaginal semen some days after ovulation. */
  public double probabilityClosed(double daysAfterOvulation) {
    return cdf((daysAfterOvulation - value("closed-after")) / value("closed-sd"));
  }

  private LogNormalDistribution spermLife(Kind kind) {
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

  private static double cdf(double z) {
    return STANDARD.cumulativeProbability(z);
  }
}
