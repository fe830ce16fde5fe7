package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentForm;
import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.kennel.HealthTestKind;
import io.github.tiderule.rules.kennel.HealthTestResult;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Ejaculate;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What must fit together in seasons, their outcome, tests and the semen. What is not known
 * contradicts nothing.
 */
public final class SeasonConsistency {

  private static final int LONGEST_SEASON_DAYS = 90;
  private static final int LONGEST_PREGNANCY_DAYS = 75;

  private SeasonConsistency() {}

  /** Whether first blood of this certainty has a day. */
  public static boolean needsDay(@Nullable Certainty certainty) {
    return certainty == Certainty.SEEN || certainty == Certainty.ESTIMATED;
  }

  /** Why an implant cannot have been taken out then: it was not in yet, or there was none. */
  public static Optional<Violation> removed(Treatment treatment) {
    @Nullable LocalDate out = treatment.removedOn();
    if (out == null) {
      return Optional.empty();
    }
    if (out.isBefore(treatment.on())) {
      return Optional.of(
          Violation.of(
              "removedOn",
              Violation.Code.WRONG_ORDER,
              out,
              "removedOn (" + out + ") is before on (" + treatment.on() + ")"));
    }
    boolean implant = treatment.form() == null || treatment.form() == TreatmentForm.IMPLANT;
    return implant
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                    "removedOn",
                    Violation.Code.CONTRADICTION,
                    out,
                    "removedOn is " + out + ", yet the form is no implant")
                .hint("Maybe form should be \"implant\"?"));
  }

  /** Why she cannot have whelped: she was not pregnant. */
  public static Optional<Violation> whelped(
      @Nullable Boolean pregnant, @Nullable LocalDate whelpedOn) {
    return !Boolean.FALSE.equals(pregnant) || whelpedOn == null
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                "pregnant",
                Violation.Code.CONTRADICTION,
                pregnant,
                "pregnant is false, yet whelpedOn is " + whelpedOn));
  }

  /**
   * What of an earlier season comes in the wrong order.
   *
   * @param thisBlood first blood of the present season, if known
   */
  public static List<Violation> order(EarlierCycle earlier, @Nullable LocalDate thisBlood) {
    LocalDate blood = earlier.firstBloodOn();
    List<Violation> found = new ArrayList<>();
    if (thisBlood != null && !blood.isBefore(thisBlood)) {
      found.add(
          Violation.of(
                  "firstBloodOn",
                  Violation.Code.WRONG_ORDER,
                  blood,
                  "firstBloodOn (" + blood + ") is not before this season's first blood")
              .hint("Maybe this is the present season? It stands in firstBlood."));
    }
    after(blood, "ovulatedOn", earlier.ovulatedOn(), LONGEST_SEASON_DAYS).ifPresent(found::add);
    after(blood, "dioestrusOn", earlier.dioestrusOn(), LONGEST_SEASON_DAYS).ifPresent(found::add);
    after(blood, "whelpedOn", earlier.whelpedOn(), LONGEST_SEASON_DAYS + LONGEST_PREGNANCY_DAYS)
        .ifPresent(found::add);
    withoutOvulation(earlier).ifPresent(found::add);
    return found;
  }

  /**
   * Why a season cannot have stopped without ovulation: what comes only after it is known of it.
   */
  private static Optional<Violation> withoutOvulation(EarlierCycle earlier) {
    boolean ovulated =
        earlier.ovulatedOn() != null
            || earlier.dioestrusOn() != null
            || earlier.whelpedOn() != null
            || earlier.litterSize() != null
            || Boolean.TRUE.equals(earlier.pregnant());
    EarlierKind kind = earlier.kind();
    return ovulated && (kind == EarlierKind.BROKEN_OFF || kind == EarlierKind.NO_OVULATION)
        ? Optional.of(
            Violation.of(
                "kind",
                Violation.Code.CONTRADICTION,
                kind.word(),
                "kind is " + kind.word() + ", yet what follows an ovulation is told of the season"))
        : Optional.empty();
  }

  /** Why a day cannot belong to a season: before first blood, or too long after it. */
  private static Optional<Violation> after(
      LocalDate blood, String name, @Nullable LocalDate day, int mostDays) {
    if (day != null && day.isBefore(blood)) {
      return Optional.of(
          Violation.of(
              name,
              Violation.Code.WRONG_ORDER,
              day,
              name + " (" + day + ") is before first blood (" + blood + ")"));
    }
    if (day != null && ChronoUnit.DAYS.between(blood, day) > mostDays) {
      return Optional.of(
          Violation.of(
              name,
              Violation.Code.IMPLAUSIBLE_DATE,
              day,
              name
                  + " ("
                  + day
                  + ") is more than "
                  + mostDays
                  + " days after first blood ("
                  + blood
                  + ")"));
    }
    return Optional.empty();
  }

  /**
   * What of an outcome contradicts itself or the season.
   *
   * @param firstBlood of this season, if known
   */
  public static List<Violation> outcome(Outcome outcome, @Nullable LocalDate firstBlood) {
    List<Violation> found = new ArrayList<>();
    LocalDate whelped = outcome.whelpedOn();
    if (whelped != null && firstBlood != null && whelped.isBefore(firstBlood)) {
      found.add(
          Violation.of(
              "whelpedOn",
              Violation.Code.WRONG_ORDER,
              whelped,
              "whelpedOn (" + whelped + ") is before first blood (" + firstBlood + ")"));
    }
    Integer litter = outcome.litterSize();
    if (Boolean.FALSE.equals(outcome.pregnant())
        && (whelped != null || (litter != null && litter > 0))) {
      found.add(
          Violation.of(
              "pregnant",
              Violation.Code.CONTRADICTION,
              false,
              "pregnant is false, yet there is a whelping or a litter"));
    }
    Integer alive = outcome.pupsBornAlive();
    if (litter != null && alive != null && alive > litter) {
      found.add(
          new Violation(
              "pupsBornAlive",
              Violation.Code.OUT_OF_RANGE,
              alive,
              Range.of(0, litter, "pups"),
              "pupsBornAlive (" + alive + ") is more than litterSize (" + litter + ")",
              null));
    }
    return found;
  }

  /** Why a result says nothing of what was looked for. */
  public static Optional<Violation> result(HealthTestKind kind, HealthTestResult result) {
    if (kind != HealthTestKind.BRUCELLA || ofInfection(result)) {
      return Optional.empty();
    }
    String meant = result == HealthTestResult.CLEAR ? "Maybe \"negative\"? " : "";
    return Optional.of(
        Violation.of(
                "result",
                Violation.Code.UNKNOWN_WORD,
                result,
                "result is \"" + result.word() + "\", which says nothing of an infection")
            .hint(meant + "Allowed for brucella: negative, positive, unknown."));
  }

  private static boolean ofInfection(HealthTestResult result) {
    return switch (result) {
      case NEGATIVE, POSITIVE, UNKNOWN -> true;
      case CLEAR, CARRIER, AFFECTED -> false;
    };
  }

  /** Why a span is none: it does not end after its start. */
  public static Optional<Violation> span(Availability span, SeasonDates dates) {
    return span.from().isBefore(span.to())
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                "from",
                Violation.Code.WRONG_ORDER,
                span.from(),
                "from ("
                    + dates.words(span.from())
                    + ") is not before to ("
                    + dates.words(span.to())
                    + ")"));
  }

  /** When the semen in hand was collected: what came by courier before what was caught here. */
  public static @Nullable Instant collectedAt(
      @Nullable Ejaculate ejaculate, @Nullable Arrival arrival) {
    @Nullable Instant sent = arrival == null ? null : arrival.collectedAt();
    @Nullable Instant fresh = ejaculate == null ? null : ejaculate.collectedAt();
    return sent == null ? fresh : sent;
  }

  /** Why a moment cannot be: it lies before the semen for it was collected. */
  public static Optional<Violation> collected(
      String name, @Nullable Instant later, @Nullable Instant collectedAt, SeasonDates dates) {
    return later == null || collectedAt == null || !later.isBefore(collectedAt)
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                name,
                Violation.Code.WRONG_ORDER,
                later,
                name
                    + " ("
                    + dates.words(later)
                    + ") is before collectedAt ("
                    + dates.words(collectedAt)
                    + ")"));
  }
}
