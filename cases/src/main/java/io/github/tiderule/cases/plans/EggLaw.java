package io.github.tiderule.cases.plans;

import io.github.tiderule.cases.cohort.Draws;
import io.github.tiderule.rules.fact.semen.Semen;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The truth about eggs and sperm: a fixed crowd of eggs, each with its own times, drawn once from a
 * seed. A share is how many of them are met.
 *
 * <p>Set to these ranges, days unless said otherwise. Her eggs are shed evenly over 12 to 36 hours
 * (spattini-2003); a season's eggs ripen 2.25 to 3.5 after that, most about 2.7 (reynaud-2005,
 * songsasen-2007), each with a scatter of its own. Sperm is ready in 4 to 7 hours. It lives, by
 * expert opinion (common practice; doak-1967 for the first): natural and fresh 2.5 to 11, about
 * 5.8; chilled for a day 1 to 3, less 0.6 to 1.2 for each day more. The cervix closes 4 to 6 after
 * ovulation (tsutsui-2009). How long eggs and thawed sperm live, and when thawed sperm finds the
 * egg ready, is what {@linkplain World worlds} differ in. Shapes of the draws are this law's own.
 */
public final class EggLaw {

  private static final int EGGS = 4096;
  private static final int MOST_DOSES = 3;

  private record Egg(
      double ripe, double dies, double lateWait, double closes, double[] ready, double[][] lives) {}

  /** What may be true of eggs and thawed sperm, as far as what is published leaves it open. */
  public enum World {
    /**
     * Four eggs in ten live 1.75 to 2.5 (karre-2012), the others 2 to 5, on average 3.0
     * (tsutsui-2009). In every second season thawed sperm finds the egg ready only 0.8 to 1.8 after
     * it is ripe (steckler-2013), and lives 12 to 24 hours.
     */
    MIXED("both schools, both lives", 0.5, 0.8, 1.8, 0.5, 1.0),
    /** Thawed sperm finds every egg ready as soon as it is ripe, and lives about a day. */
    EARLY("early school, a day of thawed life", 0, 0, 0, 0.75, 1.25),
    /** Thawed sperm finds every egg ready only about a day after it is ripe. */
    LATE("late school", 1, 0.7, 1.3, 0.5, 1.0),
    /** Every egg lives 1.5 to 2.5; the schools stand even, about a day apart. */
    SHORT("short egg life", 0.5, 0.7, 1.3, 0.5, 1.0),
    /** Every egg lives 2.5 to 5; the schools stand even, about a day apart. */
    LONG("long egg life", 0.5, 0.7, 1.3, 0.5, 1.0);

    private final String words;
    private final double late;
    private final double waitFrom;
    private final double waitTo;
    private final double thawedFrom;
    private final double thawedTo;

    World(
        String words,
        double late,
        double waitFrom,
        double waitTo,
        double thawedFrom,
        double thawedTo) {
      this.words = words;
      this.late = late;
      this.waitFrom = waitFrom;
      this.waitTo = waitTo;
      this.thawedFrom = thawedFrom;
      this.thawedTo = thawedTo;
    }

    String words() {
      return words;
    }

    private double life(Draws draws) {
      return switch (this) {
        case SHORT -> draws.uniform(1.5, 2.5);
        case LONG -> 2.5 + 2.5 * draws.beta(1.2, 2);
        case MIXED, EARLY, LATE ->
            draws.chance(0.4) ? draws.uniform(1.75, 2.5) : 2 + 3 * draws.beta(1.2, 2.4);
      };
    }
  }

  private final List<Egg> eggs;

  private EggLaw(List<Egg> eggs) {
    this.eggs = eggs;
  }

  /** A crowd of eggs of a world. */
  public static EggLaw of(long seed, World world) {
    return new EggLaw(
        IntStream.range(0, EGGS).mapToObj(i -> egg(Draws.of(seed ^ 0x5EEDL, i), world)).toList());
  }

  private static Egg egg(Draws draws, World world) {
    double shed = draws.uniform(-0.5, 0.5) * draws.uniform(0.5, 1.5);
    double season = Math.min(Math.max(draws.normal(2.7, 0.3), 2.25), 3.5);
    double ripe = shed + season + draws.normal(0, 0.2);
    double life = world.life(draws);
    double wait = draws.chance(world.late) ? draws.uniform(world.waitFrom, world.waitTo) : 0;
    double[] ready = new double[MOST_DOSES];
    double[][] lives = new double[MOST_DOSES][];
    for (int dose = 0; dose < MOST_DOSES; dose++) {
      ready[dose] = draws.uniform(4, 7) / 24;
      lives[dose] =
          new double[] {
            Math.min(Math.max(draws.normal(5.8, 1.6), 2.5), 11),
            draws.uniform(1, 3),
            draws.uniform(0.6, 1.2),
            draws.uniform(world.thawedFrom, world.thawedTo)
          };
    }
    return new Egg(ripe, ripe + life, wait, draws.uniform(4, 6), ready, lives);
  }

  /**
   * The eggs met by one dose.
   *
   * @param place which of her doses it is, from 0: sperm of each has lives of its own
   * @param after days from true ovulation to the dose
   */
  BitSet met(Row row, int place, double after, double ageHours) {
    BitSet met = new BitSet(EGGS);
    for (int i = 0; i < EGGS; i++) {
      met.set(i, meets(eggs.get(i), row, place, after, ageHours));
    }
    return met;
  }

  private static boolean meets(Egg egg, Row row, int place, double after, double ageHours) {
    if (!row.intoUterus() && after >= egg.closes()) {
      return false;
    }
    double[] lives = egg.lives()[place];
    double life =
        switch (row.semen()) {
          case NATURAL, FRESH -> lives[0];
          case CHILLED -> Math.max(0.25, lives[1] - lives[2] * Math.max(0, ageHours / 24 - 1));
          case FROZEN -> lives[3];
        };
    double opens = egg.ripe() + (row.semen() == Semen.FROZEN ? egg.lateWait() : 0);
    double meeting = Math.max(opens, after + egg.ready()[place]);
    return meeting <= egg.dies() && opens <= after + life;
  }

  /** Share of eggs met by all doses of a season. */
  public double share(Row row, List<Given> doses, double ovulation) {
    BitSet met = new BitSet(EGGS);
    for (int place = 0; place < doses.size(); place++) {
      Given dose = doses.get(place);
      met.or(met(row, Math.min(place, MOST_DOSES - 1), dose.day() - ovulation, dose.ageHours()));
    }
    return share(met);
  }

  /** Share of all eggs that are in a set. */
  static double share(BitSet met) {
    return met.cardinality() / (double) EGGS;
  }
}
