package io.github.tiderule.api.record;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How a season that is over was no ordinary one, by its progesterone: it broke off before it rose,
 * or rose and fell back. So a season that came to nothing is none for the interval to the next.
 *
 * <p>The record reads it without the rules, as it does {@link SmearShift}; thresholds are those the
 * rules come with, and what is not plain is left an ordinary season.
 */
final class SeasonKind {

  private static final SeasonKind USUAL = new SeasonKind(Parameters.load());

  private final double floor;
  private final double base;
  private final double unrisen;
  private final double fallDays;
  private final double leastDay;
  private final double interval;

  private SeasonKind(Parameters parameters) {
    floor = parameters.value("findings.rise.floor");
    base = parameters.value("findings.fall.to");
    unrisen = parameters.value("findings.again.unrisen");
    fallDays = parameters.value("findings.fall.days");
    leastDay = parameters.value("findings.split.least-day");
    interval = parameters.value("care.interval.days");
  }

  /** One result in ng/mL, with what it is at the least and at the most. */
  private record Span(Instant at, double low, double high) {}

  /**
   * How the season came to nothing; absent where it did not, or where that is not known.
   *
   * @param blood its first blood
   * @param next first blood of the season that asks
   * @param last the last day that may be told of
   */
  static @Nullable EarlierKind of(
      CycleRecord season, LocalDate blood, LocalDate next, LocalDate last) {
    return ovulated(season) ? null : USUAL.byValues(season, blood, next, last);
  }

  private static boolean ovulated(CycleRecord season) {
    Outcome outcome = season.outcome();
    return outcome.whelpedOn() != null
        || outcome.litterSize() != null
        || Boolean.TRUE.equals(outcome.pregnant())
        || !SmearShift.pairs(season).isEmpty()
        || season.observations().stream()
            .anyMatch(
                one -> one instanceof OvaryScan scan && scan.finding() == OvaryFinding.OVULATED);
  }

  private @Nullable EarlierKind byValues(
      CycleRecord season, LocalDate blood, LocalDate next, LocalDate last) {
    List<Span> all =
        season.observations().stream()
            .filter(one -> !day(season, one.at()).isAfter(last))
            .flatMap(SeasonKind::span)
            .toList();
    if (all.isEmpty() || all.stream().anyMatch(one -> Double.isNaN(one.low() + one.high()))) {
      return null;
    }
    Span latest = all.get(all.size() - 1);
    Optional<Span> risen =
        all.stream().filter(one -> one.high() >= unrisen).reduce((first, second) -> second);
    if (risen.isPresent()) {
      return fellBack(risen.get(), latest) ? EarlierKind.NO_OVULATION : null;
    }
    boolean lateEnough = ChronoUnit.DAYS.between(blood, day(season, latest.at())) >= leastDay;
    boolean anotherSoon = ChronoUnit.DAYS.between(blood, next) < interval;
    boolean neverRose = all.stream().allMatch(one -> one.high() < floor);
    boolean over = anotherSoon || (neverRose && stopped(season));
    return over && lateEnough && latest.high() < floor ? EarlierKind.BROKEN_OFF : null;
  }

  private boolean fellBack(Span risen, Span latest) {
    long hours = ChronoUnit.HOURS.between(risen.at(), latest.at());
    return risen.low() >= unrisen && latest.high() < base && hours <= 24 * fallDays;
  }

  private static boolean stopped(CycleRecord season) {
    return season.observations().stream()
        .anyMatch(
            one ->
                one instanceof Sign sign
                    && sign.sign() == SignKind.BLEEDING_STOPS
                    && sign.present());
  }

  private static LocalDate day(CycleRecord season, Instant at) {
    return at.atZone(season.zone()).toLocalDate();
  }

  private static Stream<Span> span(Observation one) {
    return one instanceof Progesterone value
        ? Stream.of(span(value))
        : one instanceof ProgesteroneBand band ? Stream.of(span(band)) : Stream.empty();
  }

  private static Span span(Progesterone value) {
    double level = value.ngPerMl();
    return value.comparator() == Comparator.BELOW
        ? new Span(value.at(), 0, level)
        : value.comparator() == Comparator.ABOVE
            ? new Span(value.at(), level, Double.POSITIVE_INFINITY)
            : new Span(value.at(), level, level);
  }

  private static Span span(ProgesteroneBand band) {
    return new Span(
        band.at(),
        band.low() == null ? 0 : band.lowNgPerMl(),
        band.high() == null ? Double.POSITIVE_INFINITY : band.highNgPerMl());
  }
}
