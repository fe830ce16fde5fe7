package io.github.tiderule.cases.published;

import static io.github.tiderule.cases.published.Measures.number;

import io.github.tiderule.engine.whelping.LateProgesterone;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TruncatedNormalDistribution;

/** Lags between events, as the parameters have them. */
final class TimingMeasures {

  private static final double HOURS = 24;
  private static final double PER_CENT = 100;

  /** Days from the first to the last of the days on which an early burst was seen. */
  private static final double BURST_SPAN_DAYS = 6.5;

  /** Ordinary error of dating ovulation, days: with it the spread is the published 2.1. */
  private static final double DATING_SD = 0.9;

  private static final double LAST_DAYS = 4;
  private static final int STEPS = 1000;

  private final Parameters parameters;
  private final LateProgesterone late;

  private TimingMeasures(Parameters parameters) {
    this.parameters = parameters;
    this.late = LateProgesterone.of(parameters);
  }

  static TimingMeasures of(Parameters parameters) {
    return new TimingMeasures(parameters);
  }

  Map<String, ToDoubleFunction<List<String>>> known() {
    return Map.ofEntries(
        Map.entry("parameter", a -> parameters.value(a.get(0))),
        Map.entry("lag-mean", a -> HOURS * lag().getMean()),
        Map.entry("lag-share", a -> PER_CENT * lag().probability(number(a, 0), number(a, 1))),
        Map.entry("surge-hours", a -> HOURS * surge()),
        Map.entry("burst-share", a -> PER_CENT * BURST_SPAN_DAYS * value("timeline.lh.burst")),
        Map.entry("lh-caught", a -> PER_CENT * caught(number(a, 0))),
        Map.entry("dioestrus-mean", a -> value("timeline.smear.dioestrus-lag")),
        Map.entry(
            "lh-dioestrus-mean", a -> value("timeline.smear.dioestrus-lag") + lag().getMean()),
        Map.entry("smear-to-lh", a -> smearToPeak()),
        Map.entry("stand-mean", a -> 0.0),
        Map.entry("stand-within", a -> PER_CENT * within("timeline.signs.stand-sd", number(a, 0))),
        Map.entry("vulva-by", a -> PER_CENT * vulva().cumulativeProbability(number(a, 0))),
        Map.entry("whelping-mean", a -> value("whelping.after-ovulation")),
        Map.entry("whelping-from-lh", a -> fromPeak().getMean()),
        Map.entry("whelping-from-lh-sd", a -> fromPeak().getStandardDeviation()),
        Map.entry(
            "late-progesterone-within",
            a -> PER_CENT * inLabour(a.get(0), number(a, 1), number(a, 2))),
        Map.entry(
            "late-progesterone-in-spite",
            a -> PER_CENT * inSpite(a.get(0), number(a, 1), number(a, 2))),
        Map.entry("late-progesterone-mean", a -> lateMean(a.get(0), number(a, 1))),
        Map.entry("scan-within", a -> PER_CENT * byScan(a.get(0), number(a, 1))),
        Map.entry("breed-difference", a -> breed(a.get(0)) - breed(a.get(1))),
        Map.entry("ovulation-whelping-within", a -> PER_CENT * aroundTheMean(number(a, 0))),
        Map.entry("rise-whelping-within", a -> PER_CENT * aroundSixtyFive(number(a, 0))));
  }

  /** Share of whelpings within so many whole days of what a measurement of a scan left. */
  private double byScan(String error, double days) {
    double odd = value("whelping.scan.odd");
    double wrong = Math.min(1, (2 * days + 1) / value("whelping.scan.spread"));
    return (1 - odd) * about(value("whelping.scan." + error), days) + odd * wrong;
  }

  private double breed(String name) {
    return value("whelping.breed." + name);
  }

  /** Share within so many whole days of the mean from ovulation, as published with its dating. */
  private double aroundTheMean(double days) {
    return about(Math.hypot(value("whelping.sd"), DATING_SD), days);
  }

  private static double about(double sd, double days) {
    double reach = (days + 0.5) / sd;
    return NormalDistribution.of(0, 1).probability(-reach, reach);
  }

  private double value(String id) {
    return parameters.value(id);
  }

  private TruncatedNormalDistribution lag() {
    return TruncatedNormalDistribution.of(
        value("timeline.lag.mean"),
        value("timeline.lag.sd"),
        value("timeline.lag.min"),
        value("timeline.lag.max"));
  }

  private double surge() {
    return value("timeline.lh.surge-before") + value("timeline.lh.surge-after");
  }

  /** Chance that a test every so many days falls into the surge and is positive. */
  private double caught(double everyDays) {
    return Math.min(1, surge() / everyDays) * value("timeline.lh.sensitivity");
  }

  /** Days from the passage of 80 % cornified to the LH peak, in the middle. */
  private double smearToPeak() {
    double share = (80 - 15) / 80.0;
    double eighty =
        value("timeline.smear.rise-centre")
            + value("timeline.smear.rise-scale") * Math.log(share / (1 - share));
    return -eighty - lag().getMean();
  }

  private double within(String sd, double days) {
    return NormalDistribution.of(0, value(sd)).probability(-days, days);
  }

  private NormalDistribution vulva() {
    return NormalDistribution.of(
        value("timeline.signs.vulva-mean"), value("timeline.signs.vulva-sd"));
  }

  private NormalDistribution fromPeak() {
    return NormalDistribution.of(
        lag().getMean() + value("whelping.after-ovulation"),
        Math.hypot(Math.sqrt(lag().getVariance()), value("whelping.sd")));
  }

  /** Share of whelpings within so many calendar days of the peak plus 65. */
  private double aroundSixtyFive(double days) {
    return fromPeak().probability(65 - days - 0.5, 65 + days + 0.5);
  }

  /** Sum over the last days, up to some hours, of the probability of a level between two. */
  private double late(String method, double hours, double low, double high) {
    double sum = 0;
    for (int i = 0; i < LAST_DAYS * STEPS && (i + 0.5) / STEPS * HOURS < hours; i++) {
      sum += late.likelihood(CurveMeasures.method(method), (i + 0.5) / STEPS, low, high);
    }
    return sum;
  }

  /** Share that whelps within some hours of a level below a limit, over the last four days. */
  private double inLabour(String method, double hours, double limit) {
    return late(method, hours, 0, limit) / late(method, LAST_DAYS * HOURS, 0, limit);
  }

  /** Share of those within some hours of whelping that stand at a level or above. */
  private double inSpite(String method, double hours, double least) {
    return 1 - late(method, hours, 0, least) / late(method, hours, 0, Double.POSITIVE_INFINITY);
  }

  /** Mean level of those it tells the day of, so many days before whelping. */
  private double lateMean(String method, double days) {
    double sd = value("whelping.progesterone.log-sd");
    return late.level(CurveMeasures.method(method), days) * Math.exp(sd * sd / 2);
  }
}
