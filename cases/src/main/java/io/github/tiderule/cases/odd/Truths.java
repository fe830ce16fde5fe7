package io.github.tiderule.cases.odd;

import io.github.tiderule.cases.cohort.Draws;
import java.util.List;

/** Draws what is true of females, kind by kind; the package page says what it is set to. */
final class Truths {

  private static final double NEVER = Double.POSITIVE_INFINITY;

  /** A cohort is smaller than this, so that no two kinds share draws. */
  private static final long LARGEST_COHORT = 1_000_000;

  private final Kind kind;
  private final int number;
  private final Draws draws;
  private final MarkedLevel level;
  private final double base;

  private Truths(Kind kind, int number, Draws draws) {
    this.kind = kind;
    this.number = number;
    this.draws = draws;
    level = new MarkedLevel(draws);
    base = within(draws.logNormal(0.5, 0.3), 0.15, 1.0);
  }

  /** Draws for one female of a kind. */
  static Draws draws(long seed, Kind kind, int number) {
    return Draws.of(seed, LARGEST_COHORT * (1 + List.of(Kind.values()).indexOf(kind)) + number);
  }

  /** The female of that number of a kind; the same for the same seed. */
  static Truth draw(long seed, Kind kind, int number) {
    Draws draws = draws(seed, kind, number);
    return new Truths(kind, number, draws).draw();
  }

  private Truth draw() {
    int noticed = draws.pick(0.7, 0.2, 0.1);
    return switch (kind) {
      case PLATEAU_LOW -> plateau(noticed, draws.uniform(2, 4));
      case PLATEAU_HIGH -> plateau(noticed, draws.uniform(4, 7.5));
      case BROKEN_ONE_FILE, BROKEN_NEW_BLOOD -> brokenOff(noticed, false);
      case BROKEN_RISE_ONE_FILE, BROKEN_RISE_NEW_BLOOD -> brokenOff(noticed, true);
      case RISE_FALLS -> riseFalls(noticed);
      case NO_OVULATION -> staysLow(noticed);
      case SLOW -> slow(noticed);
      case FAST -> fast(noticed);
      case LUTEAL_FAILURE -> lutealFailure(noticed);
      default -> ordinary(noticed, 0, NEVER, within(draws.gammaWith(11.5, 3.1), 5, 26));
    };
  }

  private double lag() {
    return 1 + 2.3 * draws.beta(2.6, 3.4);
  }

  private double atPeak() {
    return within(draws.logNormal(2.2, 0.22), 1.5, 3.5);
  }

  private double atOvulation(double atPeak) {
    return within(draws.logNormal(5.5, 0.3), Math.max(3, 1.6 * atPeak), 11);
  }

  private void climbOn(double ovulation, double atOvulation) {
    double third = atOvulation * draws.logNormal(2.4, 0.15);
    level.mark(ovulation + 3, third);
    level.mark(ovulation + 8, Math.max(1.25 * third, draws.logNormal(30, 0.25)));
  }

  /** An ordinary season that begins on a day. */
  private Truth ordinary(int noticed, double blood, double stops, double untilOvulation) {
    double ovulation = blood + untilOvulation;
    double peak = ovulation - lag();
    double atPeak = atPeak();
    double atOvulation = atOvulation(atPeak);
    level.mark(peak - draws.uniform(1.5, 3), base);
    level.mark(peak, atPeak);
    level.mark(ovulation, atOvulation);
    climbOn(ovulation, atOvulation);
    return truth(noticed, stops, blood, peak, ovulation);
  }

  private Truth plateau(int noticed, double height) {
    double days = draws.uniform(3, 14);
    double lag = lag();
    double ovulation =
        Math.max(within(draws.gammaWith(12.5, 3.1), 7, 26), 5 + days + lag + draws.uniform(0, 3));
    double peak = ovulation - lag;
    double rises = draws.uniform(1, 2.5);
    level.mark(peak - days - rises, base);
    level.mark(peak - days, height);
    level.mark(peak, height * draws.uniform(0.95, 1.1));
    double atOvulation = Math.max(height * draws.uniform(1.4, 1.9), draws.logNormal(5.5, 0.25));
    level.mark(ovulation, atOvulation);
    climbOn(ovulation, atOvulation);
    return truth(noticed, NEVER, 0, peak, ovulation);
  }

  private Truth brokenOff(int noticed, boolean smallRise) {
    double stops = draws.uniform(9, 18);
    if (smallRise) {
      double top = draws.uniform(1.2, 3);
      double on = stops - draws.uniform(2, 5);
      level.mark(on - draws.uniform(1.5, 4), base);
      level.mark(on, Math.max(top, 1.6 * base));
      level.mark(on + draws.uniform(2, 5), base);
    }
    double blood = Math.floor(stops + draws.uniform(14, 84));
    return ordinary(noticed, blood, stops, within(draws.gammaWith(10.5, 2.5), 5, 20));
  }

  private Truth riseFalls(int noticed) {
    double starts = draws.uniform(4, 12);
    double top = draws.uniform(3, 8);
    double climbs = starts + draws.uniform(2, 6);
    double holds = climbs + draws.uniform(0, 4);
    level.mark(starts, base);
    level.mark(climbs, top);
    level.mark(holds, top * draws.uniform(0.85, 1.05));
    level.mark(holds + draws.uniform(3, 7), base * draws.uniform(1, 1.8));
    return without(noticed, holds + draws.uniform(1, 5));
  }

  private Truth staysLow(int noticed) {
    level.mark(5, base);
    level.mark(draws.uniform(8, 18), Math.min(1.3, base * draws.uniform(1, 2.2)));
    level.mark(25, base);
    return without(noticed, draws.uniform(14, 24));
  }

  private Truth slow(int noticed) {
    double lag = draws.uniform(2.2, 3.3);
    double ovulation = within(draws.gammaWith(19, 3), 15, 30);
    double peak = ovulation - lag;
    double atPeak = draws.uniform(1.7, 2.6);
    double atOvulation = Math.max(1.6 * atPeak, draws.uniform(3.6, 5.5));
    level.mark(peak - draws.uniform(6, 11), base);
    level.mark(peak, atPeak);
    level.mark(ovulation, atOvulation);
    level.mark(ovulation + 4, atOvulation * draws.uniform(1.8, 2.3));
    level.mark(ovulation + 10, draws.uniform(15, 28));
    return truth(noticed, NEVER, 0, peak, ovulation);
  }

  private Truth fast(int noticed) {
    double lag = draws.uniform(1, 1.6);
    double ovulation = within(draws.gammaWith(10, 2.5), 5, 22);
    double peak = ovulation - lag;
    double atPeak = draws.uniform(1.8, 3.2);
    double atOvulation = atPeak * draws.uniform(2.1, 2.9);
    level.mark(peak - draws.uniform(0.7, 1.2), base);
    level.mark(peak, atPeak);
    level.mark(ovulation, atOvulation);
    level.mark(ovulation + 1.5, atOvulation * draws.uniform(2, 2.6));
    level.mark(ovulation + 5, draws.uniform(25, 50));
    return truth(noticed, NEVER, 0, peak, ovulation);
  }

  private Truth lutealFailure(int noticed) {
    Truth truth = ordinary(noticed, 0, NEVER, within(draws.gammaWith(11.5, 3.1), 5, 26));
    double from = truth.ovulation() + draws.uniform(5, 7.5);
    level.mark(from, truth.progesterone().at(from));
    level.clearAfter(from);
    level.mark(from + draws.uniform(3, 8), draws.uniform(1, 4));
    return truth;
  }

  private Truth truth(int noticed, double stops, double blood, double peak, double ovulation) {
    double surge = draws.uniform(1.0, 1.67);
    double from = peak - surge * draws.uniform(0.25, 0.5);
    boolean burst = kind == Kind.EARLY_BURST;
    double burstFrom = burst ? Math.max(3, peak - draws.uniform(3.5, 9.5)) : NEVER;
    double full = Math.max(blood + 2, ovulation - within(draws.normal(6, 1.5), 3, 9));
    return new Truth(
        kind,
        number,
        noticed,
        stops,
        blood,
        ovulation,
        ovulation + within(draws.normal(6, 0.7), 4.5, 7.5),
        from,
        from + surge,
        burstFrom,
        burstFrom + draws.uniform(0.5, 1.2),
        full,
        NEVER,
        level);
  }

  /** A season without ovulation, whose cells are cornified until a day. */
  private Truth without(int noticed, double until) {
    return new Truth(
        kind,
        number,
        noticed,
        NEVER,
        0,
        NEVER,
        NEVER,
        NEVER,
        NEVER,
        NEVER,
        NEVER,
        draws.uniform(6, 11),
        until,
        level);
  }

  private static double within(double value, double least, double most) {
    return Math.min(Math.max(value, least), most);
  }
}
