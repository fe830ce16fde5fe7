package io.github.tiderule.cases.cohort;

/**
 * Draws females.
 *
 * <p>Set to these figures: noted first blood to ovulation 11.1 days on average, between 3 and 31
 * (hori-2012), with a spread of about three days (vanhaaften-1989); LH peak to ovulation mean 2.0
 * days, skewed, 1 to 3.3 (concannon-1977, wildt-1978); progesterone at ovulation about 5.5 ng/mL,
 * log-SD 0.35, and a growth about ovulation of 1.3 to 2.1 a day (working values read from
 * hollinshead-2019 and concannon-1977); surge of 24 to 40 hours (concannon-1977); an earlier burst
 * in 52 %, 3 to 9.5 days before (wildt-1978); smear turning 6 days after ovulation (holst-1974,
 * from memory); plateaus in 7 % and no ovulation in 1 % (intechopen; common practice).
 */
public final class Bitches {

  /** Progesterone at ovulation, ng/mL, and its spread between females. */
  static final double LEVEL = 5.5;

  static final double LEVEL_LOG_SD = 0.35;

  /** Growth per day at ovulation; the spread is that of the log of its log. */
  static final double GROWTH = 1.57;

  static final double PACE_LOG_SD = 0.27;
  static final double SLOWEST = 1.3;
  static final double FASTEST = 2.1;

  private static final double LONG_TAIL = 0.06;
  private static final double EARLIEST = 3;
  private static final double LATEST = 31;
  private static final int FIRST_SWING = -10;
  private static final int SWINGS = 70;

  private Bitches() {}

  /** The female of that number of a cohort; the same for the same seed, whoever else is drawn. */
  public static Bitch draw(long seed, int number) {
    Draws draws = Draws.of(seed, number);
    double bled = draws.uniform(0, 1);
    int noticedAfter = draws.pick(0.6, 0.25, 0.15);
    double ovulation = bled + untilOvulation(draws);
    double lag = 1 + 2.3 * draws.beta(2.6, 3.4);
    double lhPeak = ovulation - lag;
    boolean ovulates = !draws.chance(0.01);
    double surge = draws.uniform(1.0, 1.67);
    double before = surge * draws.uniform(0.25, 0.5);
    boolean burst = draws.chance(0.52);
    double burstFrom = burst ? lhPeak - draws.uniform(3.5, 9.5) : Double.POSITIVE_INFINITY;
    double never = Double.POSITIVE_INFINITY;
    return new Bitch(
        number,
        noticedAfter,
        ovulates,
        lhPeak,
        ovulation,
        ovulation + draws.normal(6, 0.7),
        ovulates ? lhPeak - before : never,
        ovulates ? lhPeak - before + surge : never,
        burstFrom,
        burstFrom + draws.uniform(0.5, 1.2),
        ovulation - draws.normal(7, 2),
        draws.uniform(0.7, 1.5),
        course(draws, ovulates, ovulation, lhPeak));
  }

  private static double untilOvulation(Draws draws) {
    while (true) {
      double days = draws.chance(LONG_TAIL) ? draws.gammaWith(14, 6.5) : draws.gammaWith(11.5, 3.1);
      if (days >= EARLIEST && days <= LATEST) {
        return days;
      }
    }
  }

  /**
   * Density, up to a factor, of the days from midnight of the day she began to bleed to ovulation;
   * the hour she began is taken as noon.
   */
  static double onsetDensity(double day) {
    double days = day - 0.5;
    return days < EARLIEST || days > LATEST
        ? 0
        : (1 - LONG_TAIL) * gammaDensity(days, 11.5, 3.1) + LONG_TAIL * gammaDensity(days, 14, 6.5);
  }

  private static double gammaDensity(double x, double mean, double sd) {
    double shape = mean * mean / (sd * sd);
    double scale = sd * sd / mean;
    // the constant only weighs the two parts against each other: Stirling's series is enough
    double logGamma =
        (shape - 0.5) * Math.log(shape) - shape + 0.5 * Math.log(2 * Math.PI) + 1 / (12 * shape);
    return Math.exp((shape - 1) * Math.log(x) - x / scale - shape * Math.log(scale) - logGamma);
  }

  private static ProgesteroneCourse course(
      Draws draws, boolean ovulates, double ovulation, double lhPeak) {
    double baseline = Math.max(0.12, draws.logNormal(0.45, 0.33));
    double atOvulation = Math.max(draws.logNormal(LEVEL, LEVEL_LOG_SD), 3 * baseline);
    double top = Math.max(draws.logNormal(30, 0.28), 2.5 * atOvulation);
    double growth = growth(draws);
    double power = draws.uniform(1.1, 2.0);
    double height = Math.log(top / baseline);
    double climbed = Math.log(atOvulation / baseline) / height;
    double root = Math.pow(climbed, 1 / power);
    double speed = Math.log(growth) / (height * power * climbed * (1 - root));
    boolean plateau = draws.chance(0.07);
    double plateauFrom = lhPeak - draws.uniform(2, 10);
    double plateauLevel = Math.min(4, Math.max(1.4, draws.logNormal(2.3, 0.25)));
    return new ProgesteroneCourse(
        baseline,
        ovulates ? top : baseline * draws.uniform(1, 2.5),
        speed,
        Math.log(root / (1 - root)),
        power,
        ovulation,
        plateau ? plateauFrom : Double.POSITIVE_INFINITY,
        plateauLevel,
        swing(draws),
        FIRST_SWING);
  }

  private static double growth(Draws draws) {
    while (true) {
      double growth = Math.exp(draws.logNormal(Math.log(GROWTH), PACE_LOG_SD));
      if (growth >= SLOWEST && growth <= FASTEST) {
        return growth;
      }
    }
  }

  /** Swing from day to day: each day keeps half of the day before's. */
  private static double[] swing(Draws draws) {
    double sd = 0.12;
    double kept = 0.5;
    double[] swing = new double[SWINGS];
    swing[0] = draws.normal(0, sd);
    for (int i = 1; i < SWINGS; i++) {
      swing[i] = kept * swing[i - 1] + draws.normal(0, sd * Math.sqrt(1 - kept * kept));
    }
    return swing;
  }
}
