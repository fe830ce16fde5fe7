package io.github.tiderule.cases.referee;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;

import io.github.tiderule.cases.InventedSeason;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TruncatedNormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * What the engine says of a season of which only first blood is known, against the same laws as a
 * library of distributions has them: the LH peak is a mixture of shifted log-normals, which half of
 * all rests put off by their length, ovulation follows it by a cut-off normal, whelping follows
 * ovulation by a normal.
 */
class DistributionRefereeTest {

  private static final Parameters PARAMETERS = Parameters.load();
  private static final double STEP = 1 / 32.0;
  private static final double LAST = 45;

  private static double value(String id) {
    return PARAMETERS.value("timeline." + id);
  }

  /** Distribution function of the LH peak, days after the noon of first blood. */
  private static double peak(double days) {
    double shift = value("onset.shift");
    double mean = Math.log(value("onset.median") + shift);
    double sd = value("onset.log-sd");
    double wide = value("onset.wide-weight");
    LogNormalDistribution usual = LogNormalDistribution.of(mean, sd);
    LogNormalDistribution tail =
        LogNormalDistribution.of(mean, Math.max(sd, value("onset.wide-log-sd")));
    double at = Math.max(0, Math.min(days, LAST) + shift);
    return (1 - wide) * usual.cumulativeProbability(at) + wide * tail.cumulativeProbability(at);
  }

  /** Distribution function of the sum of the LH peak and something independent of it. */
  private static double later(double days, DoubleUnaryOperator lag) {
    double sum = 0;
    for (double at = -4; at < LAST; at += STEP) {
      sum += (peak(at + STEP) - peak(at)) * lag.applyAsDouble(days - at - STEP / 2);
    }
    return sum / peak(LAST);
  }

  private static double quantile(DoubleUnaryOperator distribution, double share) {
    double low = -5;
    double high = 150;
    while (high - low > 1e-4) {
      double middle = (low + high) / 2;
      if (distribution.applyAsDouble(middle) < share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static double days(OffsetDateTime at) {
    return InventedSeason.days(at.toInstant());
  }

  private static Advice advice() {
    return Tiderule.create().advise(new InventedSeason().asOf(0.5));
  }

  /** Within a quarter of an hour: the engine's answer is in whole minutes, on a finer grid. */
  @Test
  void ovulationCountedFromFirstBloodAgrees() {
    TruncatedNormalDistribution lag =
        TruncatedNormalDistribution.of(
            value("lag.mean"), value("lag.sd"), value("lag.min"), value("lag.max"));
    DoubleUnaryOperator ovulation = rested(days -> later(days, lag::cumulativeProbability));
    Ovulation said = Objects.requireNonNull(advice().timing().ovulation());
    assertThat(days(said.p05()), closeTo(quantile(ovulation, 0.05), 0.01));
    assertThat(days(said.p25()), closeTo(quantile(ovulation, 0.25), 0.01));
    assertThat(days(said.median()), closeTo(quantile(ovulation, 0.5), 0.01));
    assertThat(days(said.p75()), closeTo(quantile(ovulation, 0.75), 0.01));
    assertThat(days(said.p95()), closeTo(quantile(ovulation, 0.95), 0.01));
  }

  /**
   * Within an hour: the lag's cut-off normal is taken as a normal of the same mean and variance.
   */
  @Test
  void whelpingCountedFromFirstBloodAgrees() {
    TruncatedNormalDistribution lag =
        TruncatedNormalDistribution.of(
            value("lag.mean"), value("lag.sd"), value("lag.min"), value("lag.max"));
    NormalDistribution sum =
        NormalDistribution.of(
            lag.getMean() + PARAMETERS.value("whelping.after-ovulation"),
            Math.hypot(Math.sqrt(lag.getVariance()), PARAMETERS.value("whelping.sd")));
    DoubleUnaryOperator whelping = rested(days -> later(days, sum::cumulativeProbability));
    Whelping said = Objects.requireNonNull(advice().course().whelping());
    assertThat(days(said.p05()), closeTo(quantile(whelping, 0.05), 0.042));
    assertThat(days(said.median()), closeTo(quantile(whelping, 0.5), 0.042));
    assertThat(days(said.p95()), closeTo(quantile(whelping, 0.95), 0.042));
  }

  /** Half of all rests before the surge put it off by their length. */
  private static DoubleUnaryOperator rested(DoubleUnaryOperator at) {
    double half =
        value("plateau.weight")
            / (1 - value("broken-off.weight") - value("no-ovulation.weight"))
            / 2;
    Map<Double, Double> weights = new TreeMap<>();
    Parameters.plateaus()
        .rows()
        .forEach(row -> weights.merge(number(row, "days"), number(row, "weight"), Double::sum));
    double all = weights.values().stream().mapToDouble(Double::doubleValue).sum();
    return days ->
        (1 - half) * at.applyAsDouble(days)
            + half
                * weights.entrySet().stream()
                    .mapToDouble(
                        rest -> rest.getValue() / all * at.applyAsDouble(days - rest.getKey()))
                    .sum();
  }

  private static double number(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }
}
