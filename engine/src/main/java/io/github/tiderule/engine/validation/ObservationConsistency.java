package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What must fit together within one observation. What is not known contradicts nothing. */
public final class ObservationConsistency {

  private ObservationConsistency() {}

  /** Why a result cannot have come then: before its blood was drawn. */
  public static Optional<Violation> reported(
      @Nullable Instant drawnAt, @Nullable Instant reportedAt, SeasonDates dates) {
    return drawnAt == null || reportedAt == null || !reportedAt.isBefore(drawnAt)
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                "reportedAt",
                Violation.Code.WRONG_ORDER,
                reportedAt,
                "reportedAt ("
                    + dates.words(reportedAt)
                    + ") is before the blood was drawn ("
                    + dates.words(drawnAt)
                    + ")"));
  }

  /** Why a value cannot be a limit: below zero there is nothing. */
  public static Optional<Violation> limit(@Nullable Double value, @Nullable Comparator comparator) {
    return comparator != Comparator.BELOW || value == null || value != 0
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                    "value",
                    Violation.Code.OUT_OF_RANGE,
                    value,
                    "value is 0 with the comparator \"<\"; nothing is below zero")
                .hint("Maybe the limit of the reportable range was left out?"));
  }

  /** That a band has no edge. */
  public static Violation noEdge() {
    return Presence.allMissing(
        "low and high", "Maybe one of them was left out? A band needs at least one edge.");
  }

  /** Why two edges make no band. */
  public static Optional<Violation> edges(@Nullable Double low, @Nullable Double high) {
    if (low != null && high != null && !(low < high)) {
      return Optional.of(
          Violation.of(
              "low",
              Violation.Code.WRONG_ORDER,
              low,
              "low (" + low + ") is not below high (" + high + ")"));
    }
    if (low == null && high != null && high == 0) {
      return Optional.of(
          Violation.of(
                  "",
                  Violation.Code.OUT_OF_RANGE,
                  high,
                  "high is 0 and low is missing; nothing is below zero")
              .hint("Maybe the two edges are swapped?"));
    }
    return Optional.empty();
  }

  /** That a smear tells nothing. */
  public static Violation emptySmear() {
    return Presence.allMissing(
        "cornifiedPercent and neutrophils",
        "Maybe one of them was left out? A smear needs at least one.");
  }

  /** That a radiograph tells nothing. */
  public static Violation emptyRadiograph() {
    return Presence.allMissing(
        "fetuses and skeletonSeen",
        "Maybe one of them was left out? A radiograph needs at least one.");
  }

  /** Why a sign has no such reason: only a refusal has one. */
  public static Optional<Violation> reason(Sign sign) {
    boolean refusal =
        (sign.sign() == SignKind.REFUSES && sign.present())
            || (sign.sign() == SignKind.STANDS && !sign.present());
    return sign.reason() == null || refusal
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                    "reason",
                    Violation.Code.CONTRADICTION,
                    sign.reason(),
                    "reason is \"" + sign.reason().word() + "\", yet she did not refuse")
                .hint("Maybe the sign is a slip? A reason belongs to a refusal."));
  }

  /** Why a scan contradicts itself: fetuses where it finds none. */
  public static Optional<Violation> scan(
      @Nullable ScanFinding finding,
      List<Double> cavities,
      List<Double> skulls,
      @Nullable Integer fetuses) {
    boolean none = cavities.isEmpty() && skulls.isEmpty() && (fetuses == null || fetuses == 0);
    return finding != ScanFinding.NOT_PREGNANT || none
        ? Optional.empty()
        : Optional.of(
            Violation.of(
                    "",
                    Violation.Code.CONTRADICTION,
                    finding,
                    "finding is \"not-pregnant\", yet there are fetuses or measurements of them")
                .hint("Maybe one of the two is a slip?"));
  }
}
