package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Seasons of every sort, far from the textbook too, drawn from a seed: rises, rests, falls and
 * nothing at all; none to three values far off; limits, kits, two laboratories; smears, LH, folds,
 * signs and scans that may contradict all of it; first blood seen, doubtful or unknown.
 */
final class VariedEvidence {

  /** Limits are summed along shared directions, which takes long with many. */
  private static final int MOST_LIMITS = 2;

  private static final int NUMBER = 11;

  private final Random random;
  private final List<Evidence.Value> values = new ArrayList<>();
  private final List<Evidence.Interval> intervals = new ArrayList<>();
  private final List<Evidence.Lh> lhTests = new ArrayList<>();
  private final List<Evidence.SmearSeen> smears = new ArrayList<>();
  private final List<Evidence.FoldsSeen> folds = new ArrayList<>();
  private final List<Evidence.SignSeen> signs = new ArrayList<>();
  private final List<Evidence.Scan> scans = new ArrayList<>();
  private double last = 4;

  private VariedEvidence(long seed) {
    random = new Random(seed);
  }

  static Evidence of(long seed) {
    VariedEvidence season = new VariedEvidence(seed);
    season.draw();
    return season.evidence();
  }

  private void draw() {
    Series[] series = {
      Series.of("A", pick(Method.values())), Series.of("B", pick(Method.values())),
    };
    double peak = 2 + 24 * random.nextDouble();
    int course = random.nextInt(5);
    int count = 1 + random.nextInt(8);
    double day = peak - 7 * random.nextDouble() - 2;
    for (int i = 0; i < count; i++) {
      day += 0.3 + 3 * random.nextDouble();
      double level = level(course, day - peak) * Math.exp(0.15 * random.nextGaussian());
      result(i, day, level, series[random.nextInt(5) == 0 ? 1 : 0]);
    }
    last = day;
    for (int wrong = random.nextInt(4); wrong > 0 && !values.isEmpty(); wrong--) {
      int place = random.nextInt(values.size());
      Evidence.Value old = values.get(place);
      double off = old.ngPerMl() * Math.exp(2.5 * random.nextGaussian());
      values.set(
          place,
          new Evidence.Value(old.id(), old.day(), off, old.series(), old.readsLow(), old.noisy()));
    }
    others(peak);
  }

  /** Usual, resting, falling back, breaking off, and at rest about ovulation's level. */
  private static double level(int course, double days) {
    double usual = Math.min(40, 0.4 + 2 * Math.exp((days < 0 ? 0.9 : 0.45) * days));
    return switch (course) {
      case 0 -> usual;
      case 1 -> Math.max(usual, 3);
      case 2 -> days < 3 ? usual : 0.6;
      case 3 -> Math.min(usual, 0.8);
      default -> Math.min(usual, 5);
    };
  }

  private void result(int i, double day, double level, Series series) {
    boolean low = random.nextInt(8) == 0;
    boolean noisy = random.nextInt(8) == 0;
    switch (intervals.size() < MOST_LIMITS ? random.nextInt(12) : NUMBER) {
      case 0 ->
          intervals.add(new Evidence.Interval("i" + i, day, 0, 0.5, series, low, noisy, false));
      case 1 ->
          intervals.add(
              new Evidence.Interval(
                  "i" + i, day, 3, Double.POSITIVE_INFINITY, series, low, noisy, false));
      case 2 ->
          intervals.add(new Evidence.Interval("k" + i, day, 3, 10, series, false, noisy, true));
      default -> values.add(new Evidence.Value("v" + i, day, level, series, low, noisy));
    }
  }

  private void others(double peak) {
    for (int i = random.nextInt(4); i > 0; i--) {
      Double cells = random.nextInt(4) == 0 ? null : (double) random.nextInt(101);
      smears.add(new Evidence.SmearSeen("c" + i, about(peak), cells, pick(Neutrophils.values())));
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      lhTests.add(new Evidence.Lh("l" + i, about(peak), random.nextBoolean()));
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      folds.add(new Evidence.FoldsSeen("f" + i, about(peak), pick(Folds.values())));
      signs.add(new Evidence.SignSeen("s" + i, about(peak), pick(SignKind.values()), i == 1));
    }
    if (random.nextInt(5) == 0) {
      scans.add(new Evidence.Scan("u", about(peak), random.nextBoolean()));
    }
  }

  private double about(double peak) {
    double day = Math.max(0, peak + 6 * random.nextGaussian());
    last = Math.max(last, day);
    return day;
  }

  private <T> T pick(T[] all) {
    return all[random.nextInt(all.length)];
  }

  private Evidence evidence() {
    int known = random.nextInt(6);
    Certainty certainty = pick(Certainty.values());
    return new Evidence(
        known == 0
            ? new FirstBlood(null, Certainty.UNKNOWN)
            : new FirstBlood(LocalDate.of(2027, 1, 3), certainty),
        known == 0 ? null : 0.5,
        last + 0.5,
        List.of(),
        List.copyOf(values),
        List.copyOf(intervals),
        List.copyOf(lhTests),
        List.copyOf(smears),
        List.copyOf(folds),
        List.copyOf(signs),
        List.copyOf(scans));
  }
}
