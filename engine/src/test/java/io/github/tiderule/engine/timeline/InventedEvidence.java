package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;

/** Invented seasons as evidence, drawn from a seed. */
final class InventedEvidence {

  private static final Method[] METHODS = {
    Method.RIA, Method.ECLIA, Method.CLIA, Method.FEIA, Method.UNKNOWN
  };

  final List<Evidence.Value> values = new ArrayList<>();
  final List<Evidence.Interval> intervals = new ArrayList<>();
  final List<Evidence.Lh> lhTests = new ArrayList<>();
  final List<Evidence.SmearSeen> smears = new ArrayList<>();

  private InventedEvidence() {}

  /** A season sampled every day or two, with an LH test or smears now and then. */
  static InventedEvidence of(long seed) {
    Random random = new Random(seed);
    InventedEvidence season = new InventedEvidence();
    Series series = Series.of("A", METHODS[random.nextInt(METHODS.length)]);
    double peak = 6 + 8 * random.nextDouble();
    double growth = 0.3 + 0.25 * random.nextDouble();
    double atPeak = Math.exp(0.75 + 0.3 * random.nextGaussian());
    double base = Math.exp(-0.8 + 0.3 * random.nextGaussian());
    double last = peak - 3 + 6 * random.nextDouble();
    for (double day = 4; day <= last; day += 1 + random.nextInt(2)) {
      double rise = atPeak * Math.exp(growth * (day - peak) * (day < peak ? 2 : 1));
      double value = (base + rise) * Math.exp(0.12 * random.nextGaussian());
      if (value < 0.5 && random.nextInt(3) == 0) {
        season.intervals.add(
            new Evidence.Interval("v" + day, day, 0, 0.5, series, false, false, false));
      } else {
        season.values.add(new Evidence.Value("v" + day, day, value, series, false, false));
      }
    }
    if (random.nextBoolean()) {
      double day = peak - 1 + 2 * random.nextDouble();
      season.lhTests.add(new Evidence.Lh("l", day, Math.abs(day - peak) < 0.4));
    }
    if (random.nextBoolean()) {
      season.smears.add(
          new Evidence.SmearSeen(
              "c", last, Math.min(100, 60 + 5 * (last - peak + 4)), Neutrophils.NONE));
    }
    return season;
  }

  Evidence evidence() {
    return new Evidence(
        new FirstBlood(LocalDate.of(2027, 1, 3), Certainty.SEEN),
        0.5,
        25,
        List.of(),
        values,
        intervals,
        lhTests,
        smears,
        List.of(),
        List.of(),
        List.of());
  }

  /** The same with one number in place of another. */
  Evidence withValue(int place, double ngPerMl) {
    Evidence.Value old = values.get(place);
    List<Evidence.Value> changed = new ArrayList<>(values);
    changed.set(
        place, new Evidence.Value(old.id(), old.day(), ngPerMl, old.series(), false, false));
    return with(changed);
  }

  /** The same with one more number of the same series. */
  Evidence plus(String id, double day, double ngPerMl) {
    List<Evidence.Value> more = new ArrayList<>(values);
    more.add(new Evidence.Value(id, day, ngPerMl, values.get(0).series(), false, false));
    return with(more);
  }

  /** The day of the last progesterone result. */
  double lastDay() {
    return Stream.concat(
            values.stream().map(Evidence.Value::day),
            intervals.stream().map(Evidence.Interval::day))
        .mapToDouble(Double::doubleValue)
        .max()
        .orElseThrow();
  }

  /** The same season, every time of it so many whole days later. */
  Evidence later(int days) {
    Evidence all = evidence();
    return new Evidence(
        new FirstBlood(LocalDate.of(2027, 1, 3).plusDays(days), Certainty.SEEN),
        0.5 + days,
        all.now() + days,
        List.of(),
        values.stream()
            .map(
                v ->
                    new Evidence.Value(
                        v.id(), v.day() + days, v.ngPerMl(), v.series(), false, false))
            .toList(),
        intervals.stream()
            .map(
                i ->
                    new Evidence.Interval(
                        i.id(), i.day() + days, i.low(), i.high(), i.series(), false, false, false))
            .toList(),
        lhTests.stream().map(l -> new Evidence.Lh(l.id(), l.day() + days, l.positive())).toList(),
        smears.stream()
            .map(
                c ->
                    new Evidence.SmearSeen(
                        c.id(), c.day() + days, c.cornifiedPercent(), c.neutrophils()))
            .toList(),
        List.of(),
        List.of(),
        List.of());
  }

  private Evidence with(List<Evidence.Value> changed) {
    Evidence all = evidence();
    return new Evidence(
        all.firstBlood(),
        all.firstBloodDay(),
        all.now(),
        all.earlierCycles(),
        changed,
        all.intervals(),
        all.lhTests(),
        all.smears(),
        all.folds(),
        all.signs(),
        all.scans());
  }
}
