package io.github.tiderule.cases.pairs;

import io.github.tiderule.cases.cohort.Bitch;
import io.github.tiderule.cases.cohort.Bitches;
import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.cases.cohort.Draws;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * How far apart the engine dates the same seasons by two methods.
 *
 * @param count seasons
 * @param apart median distance between the two medians of ovulation, days
 * @param p90 its 90th percentile
 * @param shift mean of it with its sign: later by the second method
 * @param sameDay share of seasons with the same first recommended day, or none both times
 */
public record PairedScore(int count, double apart, double p90, double shift, double sameDay) {

  /** Medians of ovulation may lie this far apart, days. */
  public static final double MOST_APART = 0.3;

  /** Least share of seasons with the same first recommended day. */
  public static final double LEAST_SAME = 0.9;

  private static final double MORNING = 8.5 / 24;
  private static final double LATER = 8 / 24.0;
  private static final int LAST_DAY = 35;
  private static final double HUNDRED = 100;

  private record Told(double ovulation, @Nullable LocalDate first) {}

  private record Both(double apart, boolean same) {}

  /** Whether the two methods are dated alike. */
  public boolean held() {
    return apart <= MOST_APART && sameDay >= LEAST_SAME;
  }

  /** The score of so many seasons. */
  public static PairedScore of(Tiderule engine, PairedSet set, long seed, int count) {
    List<Both> all =
        IntStream.range(0, count)
            .parallel()
            .mapToObj(number -> both(engine, set, seed, number))
            .filter(Objects::nonNull)
            .map(Objects::requireNonNull)
            .toList();
    double[] sizes = all.stream().mapToDouble(one -> Math.abs(one.apart())).sorted().toArray();
    return new PairedScore(
        all.size(),
        sizes[sizes.length / 2],
        sizes[(int) (0.9 * (sizes.length - 1))],
        all.stream().mapToDouble(Both::apart).average().orElseThrow(),
        all.stream().filter(Both::same).count() / (double) all.size());
  }

  private static @Nullable Both both(Tiderule engine, PairedSet set, long seed, int number) {
    Bitch bitch = Bitches.draw(seed, number);
    if (!bitch.ovulates()) {
      return null;
    }
    Draws draws = Draws.of(seed + 1, number);
    List<Observation> first = new ArrayList<>();
    List<Observation> second = new ArrayList<>();
    int start = bitch.noticedAfter() + 5 + draws.pick(1 / 3.0, 1 / 3.0, 1 / 3.0);
    // by days alone, so that both are drawn alike whatever they read
    int last = (int) Math.ceil(bitch.ovulation()) + 3;
    for (int day = start; day <= Math.min(last, LAST_DAY) || first.isEmpty(); day += 2) {
      double at = day + MORNING;
      double blood = bitch.p4At(at) * Math.exp(0.1 * draws.normal(0, 1));
      double read = rounded(scale(set.first()) * blood * Math.exp(0.05 * draws.normal(0, 1)));
      first.add(result("p" + day, at, read, set.first()));
      second.add(result("p" + day, at, rounded(set.second(read)), set.second()));
    }
    Told one = told(engine, bitch, first);
    Told other = told(engine, bitch, second);
    return new Both(
        other.ovulation() - one.ovulation(), Objects.equals(one.first(), other.first()));
  }

  /** What the first method reads of radioimmunoassay, as published for it. */
  private static double scale(Method method) {
    return method == Method.CLIA ? 0.85 : 1;
  }

  private static double rounded(double value) {
    return Math.max(0.01, Math.round(value * HUNDRED) / HUNDRED);
  }

  private static Progesterone result(String id, double day, double value, Method method) {
    return new Progesterone.Result(value, null, Unit.NG_PER_ML)
        .drawn(Calendar.instant(day))
        .withId(id)
        .method(method)
        .laboratory("A");
  }

  private static Told told(Tiderule engine, Bitch bitch, List<Observation> seen) {
    double asked = Calendar.day(seen.get(seen.size() - 1).at()) + LATER;
    Advice advice =
        engine.advise(
            CycleRecord.on(Calendar.instant(asked), Calendar.ZONE)
                .firstBlood(FirstBlood.seen(Calendar.FIRST_DAY.plusDays(bitch.noticedAfter())))
                .addAll(seen)
                .build());
    return new Told(
        Calendar.day(Objects.requireNonNull(advice.timing().ovulation()).median().toInstant()),
        advice.breeding().days().stream()
            .filter(day -> day.verdict() == Verdict.RECOMMENDED)
            .map(BreedingDay::day)
            .min(Comparator.naturalOrder())
            .orElse(null));
  }
}
