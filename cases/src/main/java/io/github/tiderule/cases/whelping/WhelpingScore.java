package io.github.tiderule.cases.whelping;

import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.course.Whelping;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * How well the whelpings of a cohort were foretold.
 *
 * @param count pregnancies with a forecast
 * @param silent pregnancies without one
 * @param median median size of the error, days
 * @param p90 its 90th percentile, days
 * @param bias mean error, days, positive where she whelped later than foretold
 * @param held share of whelpings inside the 9-in-10 interval
 * @param width mean width of that interval, days
 * @param withinDays share of whelpings within one, two and three local days of the foretold one
 */
public record WhelpingScore(
    int count,
    int silent,
    double median,
    double p90,
    double bias,
    double held,
    double width,
    List<Double> withinDays) {

  private record Foretold(double error, boolean held, double width, long days) {}

  /** The score of so many pregnancies. */
  public static WhelpingScore of(
      Tiderule engine, GestationLaw law, Keeping keeping, long seed, int count) {
    List<SimulatedPregnancy> all =
        IntStream.range(0, count)
            .mapToObj(number -> SimulatedPregnancy.draw(law, keeping, seed, number))
            .filter(one -> one.bitch().ovulates())
            .toList();
    List<Foretold> told =
        all.parallelStream()
            .map(one -> foretold(engine, one))
            .filter(Objects::nonNull)
            .map(Objects::requireNonNull)
            .toList();
    double[] sizes = told.stream().mapToDouble(f -> Math.abs(f.error())).sorted().toArray();
    return new WhelpingScore(
        told.size(),
        all.size() - told.size(),
        quantile(sizes, 0.5),
        quantile(sizes, 0.9),
        told.stream().mapToDouble(Foretold::error).average().orElseThrow(),
        told.stream().filter(Foretold::held).count() / (double) told.size(),
        told.stream().mapToDouble(Foretold::width).average().orElseThrow(),
        IntStream.rangeClosed(1, 3)
            .mapToObj(n -> told.stream().filter(f -> f.days() <= n).count() / (double) told.size())
            .toList());
  }

  private static @Nullable Foretold foretold(Tiderule engine, SimulatedPregnancy one) {
    Whelping whelping = engine.advise(one.known()).course().whelping();
    if (whelping == null) {
      return null;
    }
    double median = Calendar.day(whelping.median().toInstant());
    double p05 = Calendar.day(whelping.p05().toInstant());
    double p95 = Calendar.day(whelping.p95().toInstant());
    double actual = one.whelping();
    return new Foretold(
        actual - median,
        actual >= p05 && actual <= p95,
        p95 - p05,
        Math.abs(Math.round(Math.floor(actual) - Math.floor(median))));
  }

  private static double quantile(double[] sorted, double share) {
    return sorted[(int) Math.round(share * (sorted.length - 1))];
  }
}
