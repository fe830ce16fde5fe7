package io.github.tiderule.cases.published;

import static io.github.tiderule.cases.published.Measures.number;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.DayProbability;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** What the whole engine says of seasons of which one thing is known. */
final class SeasonMeasures {

  private static final LocalDate FIRST_BLOOD = LocalDate.of(2027, 1, 3);
  private static final Instant NOON = Instant.parse("2027-01-03T12:00:00Z");
  private static final double PER_CENT = 100;
  private static final double Q95_IN_SDS = 1.6449;
  private static final double BEST_AFTER_OVULATION = 1.5;

  private final Tiderule engine;
  private final Ovulation onset;
  private final Whelping shifted;

  /** Day of the shift between two daily smears. */
  private static final double SHIFT = 17.5;

  private SeasonMeasures(Tiderule engine) {
    this.engine = engine;
    onset = Objects.requireNonNull(advise(1, List.of()).timing().ovulation());
    List<Observation> smears =
        List.of(
            new Smear("c1", day(10), 95.0, Neutrophils.NONE),
            new Smear("c2", day(14), 95.0, Neutrophils.NONE),
            new Smear("c3", day(17), 92.0, Neutrophils.NONE),
            new Smear("c4", day(18), 35.0, Neutrophils.MANY),
            new BreedingDone("m1", day(12), Semen.NATURAL, Route.NATURAL));
    shifted = Objects.requireNonNull(advise(18.2, smears).course().whelping());
  }

  static SeasonMeasures of(Tiderule engine) {
    return new SeasonMeasures(engine);
  }

  Map<String, ToDoubleFunction<List<String>>> known() {
    return Map.of(
        "onset-median", a -> days(onset.median()),
        "onset-sd", a -> (days(onset.p95()) - days(onset.p05())) / (2 * Q95_IN_SDS),
        "onset-share", a -> PER_CENT * share(onset.byDay(), number(a, 0), number(a, 1)),
        "best-outside", a -> PER_CENT * (1 - bestWithin(number(a, 0), number(a, 1))),
        "shift-to-whelping", a -> days(shifted.median()) - SHIFT,
        "shift-to-whelping-within", a -> PER_CENT * whelpingWithin(number(a, 0)),
        "whelping-sd", a -> whelpingSd());
  }

  private Advice advise(double day, List<Observation> observations) {
    return engine.advise(
        CycleRecord.on(day(day), ZoneId.of("UTC"))
            .firstBlood(FirstBlood.seen(FIRST_BLOOD))
            .addAll(observations)
            .build());
  }

  private static Instant day(double days) {
    return NOON.plusSeconds(Math.round(days * 86_400));
  }

  private static double days(OffsetDateTime at) {
    return Duration.between(NOON, at.toInstant()).toSeconds() / 86_400.0;
  }

  /** Share between two times, days after the noon of first blood. */
  private static double share(List<DayProbability> byDay, double from, double to) {
    return before(byDay, to) - before(byDay, from);
  }

  /** Share before a time, each day's share spread evenly over it. */
  private static double before(List<DayProbability> byDay, double days) {
    return byDay.stream()
        .mapToDouble(
            one -> one.probability() * Math.max(0, Math.min(1, days - count(one.day()) + 0.5)))
        .sum();
  }

  private static double count(LocalDate day) {
    return (double) ChronoUnit.DAYS.between(FIRST_BLOOD, day);
  }

  /** Share of best days that lie on the days from one to another after first blood. */
  private double bestWithin(double first, double last) {
    return share(
        onset.byDay(), first - 0.5 - BEST_AFTER_OVULATION, last + 0.5 - BEST_AFTER_OVULATION);
  }

  private double whelpingWithin(double days) {
    LocalDate expected = FIRST_BLOOD.plusDays(Math.round(SHIFT + 0.5) + 57);
    return shifted.byDay().stream()
        .filter(one -> Math.abs(count(one.day()) - count(expected)) <= days)
        .mapToDouble(DayProbability::probability)
        .sum();
  }

  /** Spread of whelping about ovulation: what is left of the window when ovulation is taken out. */
  private double whelpingSd() {
    @Nullable Whelping whelping = advise(1, List.of()).course().whelping();
    double whole = width(Objects.requireNonNull(whelping).p05(), whelping.p95());
    double own = width(onset.p05(), onset.p95());
    return Math.sqrt(Math.max(0, whole * whole - own * own));
  }

  private static double width(OffsetDateTime from, OffsetDateTime to) {
    return (days(to) - days(from)) / (2 * Q95_IN_SDS);
  }
}
