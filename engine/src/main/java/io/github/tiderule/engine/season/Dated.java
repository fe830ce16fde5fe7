package io.github.tiderule.engine.season;

import io.github.tiderule.engine.advice.course.CountedFrom;
import io.github.tiderule.engine.advice.course.DayProbability;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Patterns;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.engine.advice.reasoning.Influence;
import io.github.tiderule.engine.timeline.Density;
import io.github.tiderule.engine.timeline.Estimate;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.engine.whelping.Gestation;
import io.github.tiderule.rules.fact.Forecast;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A season whose ovulation is estimated, on the calendar.
 *
 * @param read as it was found, held against the estimate
 * @param evidence the numbers it is estimated from
 */
public record Dated(Read read, Evidence evidence, Estimate estimate) {

  private static final int SHARES = 10_000;

  /** Estimates; null where nothing on file dates the season. */
  public static @Nullable Dated of(Read read) {
    Evidence evidence = Gathering.of(read);
    Part posterior = Part.begun("posterior");
    @Nullable Estimate estimate =
        evidence.saysSomething() ? read.season().tools().timeline().estimate(evidence) : null;
    posterior.commit();
    if (estimate == null) {
      return null;
    }
    Dated dated = new Dated(read, evidence, estimate);
    return new Dated(read.against(dated.forecast()), evidence, estimate);
  }

  public Season season() {
    return read.season();
  }

  private Clock clock() {
    return season().clock();
  }

  private TimeAxis axis() {
    return season().axis();
  }

  /** Now, in days on the season's axis(). */
  private double today() {
    return axis().day(season().asOf());
  }

  public Density density() {
    return estimate.ovulation();
  }

  /** A quantile of ovulation as an instant. */
  public Instant quantile(double share) {
    return axis().instant(estimate.ovulation().quantile(share));
  }

  /** Mean, over where ovulation may lie, of something that depends on the days since then. */
  public double mean(DoubleUnaryOperator bySinceOvulation) {
    Density ovulation = estimate.ovulation();
    double now = today();
    double sum = 0;
    for (int i = 0; i < ovulation.size(); i++) {
      double since = now - ovulation.at(i);
      sum += ovulation.value(i) * ovulation.step() * bySinceOvulation.applyAsDouble(since);
    }
    return sum;
  }

  public Forecast forecast() {
    Density ovulation = estimate.ovulation();
    Estimate.Courses courses = estimate.courses();
    return new Forecast(
        quantile(0.05),
        quantile(0.25),
        quantile(0.5),
        quantile(0.75),
        quantile(0.95),
        ovulation.quantile(0.5) - today(),
        width(),
        estimate.noOvulation(),
        courses.plateau(),
        courses.irregular(),
        courses.failing(),
        courses.brokenOff(),
        estimate.fit());
  }

  /** Whether ovulation has passed, as surely as anything is told to be past. */
  public boolean past() {
    return quantile(season().tools().value("planning.past-share")).isBefore(season().asOf());
  }

  /** Days between the 5th and the 95th percentile of ovulation. */
  public double width() {
    return estimate.ovulation().quantile(0.95) - estimate.ovulation().quantile(0.05);
  }

  public Sentence words() {
    return Sentence.of(
        "ovulation about {}, nine times in ten between {} and {}",
        clock().dayAndTime(quantile(0.5)),
        clock().dayAndTime(quantile(0.05)),
        clock().dayAndTime(quantile(0.95)));
  }

  public Quantiles lhPeak() {
    return quantiles(estimate.peak());
  }

  public Ovulation ovulation() {
    Density ovulation = estimate.ovulation();
    Estimate.Courses courses = estimate.courses();
    return new Ovulation(
        at(ovulation, 0.5),
        at(ovulation, 0.05),
        at(ovulation, 0.25),
        at(ovulation, 0.75),
        at(ovulation, 0.95),
        read.proven() && agrees(),
        byDay(ovulation, 1 - estimate.noOvulation()),
        round(estimate.noOvulation()),
        new Patterns(
            round(courses.ordinary() + courses.irregular() + courses.failing()),
            round(courses.plateau()),
            round(estimate.noOvulation()),
            round(courses.irregular()),
            round(courses.failing()),
            round(courses.brokenOff())),
        round(estimate.fit()));
  }

  /** Whether the estimate bears a proof out: ovulation is behind, and did not fail. */
  private boolean agrees() {
    return estimate.noOvulation() <= season().tools().value("findings.no-ovulation.likely")
        && estimate.ovulation().quantile(0.5) <= today();
  }

  private OffsetDateTime at(Density density, double share) {
    return clock().offset(axis().instant(density.quantile(share)));
  }

  /** A forecast of whelping on the calendar. */
  public Whelping whelping(Gestation.Estimate forecast) {
    Density whelping = forecast.whelping();
    return new Whelping(
        at(whelping, 0.5),
        at(whelping, 0.05),
        at(whelping, 0.95),
        byDay(whelping, 1),
        forecast.fromShift() ? CountedFrom.DIOESTRUS : CountedFrom.OVULATION,
        forecast.notes());
  }

  /** Quantiles of something dated. */
  public Quantiles quantiles(Density density) {
    return new Quantiles(
        at(density, 0.5),
        at(density, 0.05),
        at(density, 0.25),
        at(density, 0.75),
        at(density, 0.95));
  }

  /** Probabilities of local days, in ten-thousandths that sum to the total. */
  private List<DayProbability> byDay(Density density, double total) {
    LocalDate first = day(density.quantile(0.002));
    LocalDate last = day(density.quantile(0.998));
    int days = (int) java.time.temporal.ChronoUnit.DAYS.between(first, last) + 1;
    double[] share = new double[days];
    double before = 0;
    for (int i = 0; i < days; i++) {
      double until = i == days - 1 ? 1 : density.cdf(midnight(first.plusDays(i + 1)));
      share[i] = (until - before) * total * SHARES;
      before = until;
    }
    int[] whole = largestRemainders(share, Math.round(total * SHARES));
    List<DayProbability> byDay = new ArrayList<>();
    for (int i = 0; i < days; i++) {
      byDay.add(new DayProbability(first.plusDays(i), whole[i] / (double) SHARES));
    }
    return byDay;
  }

  private static int[] largestRemainders(double[] share, long total) {
    int[] whole = new int[share.length];
    List<Integer> order = new ArrayList<>();
    long sum = 0;
    for (int i = 0; i < share.length; i++) {
      whole[i] = (int) Math.floor(share[i]);
      sum += whole[i];
      order.add(i);
    }
    order.sort(Comparator.comparingDouble(i -> whole[i] - share[i]));
    for (int k = 0; k < order.size() && sum < total; k++, sum++) {
      whole[order.get(k)]++;
    }
    return whole;
  }

  private LocalDate day(double day) {
    return axis().instant(day).atZone(clock().zone()).toLocalDate();
  }

  private double midnight(LocalDate day) {
    return axis().day(day.atStartOfDay(clock().zone()).toInstant());
  }

  public List<Influence> influence() {
    return estimate.influences().stream()
        .sorted(
            Comparator.comparingDouble(Estimate.Pull::day)
                .thenComparing(Estimate.Pull::observation))
        .map(
            pull ->
                new Influence(
                    pull.observation(),
                    pull.medianShift() * 24,
                    pull.widthChange() * 24,
                    pull.odd()))
        .toList();
  }

  private static double round(double probability) {
    return Math.round(probability * SHARES) / (double) SHARES;
  }
}
