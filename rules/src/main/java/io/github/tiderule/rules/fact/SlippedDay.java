package io.github.tiderule.rules.fact;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The days that may have been meant where another was written: of another year, a month off, or
 * with day and month exchanged.
 */
public final class SlippedDay {

  private SlippedDay() {}

  /**
   * The days that may have been meant, of those within a span.
   *
   * @param typed the day as written
   * @param least first day of the span
   * @param most last day of the span
   * @return of another year first, then a month, then exchanged; each once
   */
  public static List<LocalDate> meant(LocalDate typed, LocalDate least, LocalDate most) {
    Optional<LocalDate> exchanged = exchanged(typed);
    return Stream.of(
            Stream.of(typed.withYear(most.getYear()), typed.withYear(least.getYear())),
            monthOff(typed, least, most),
            exchanged.stream()
                .flatMap(
                    day -> Stream.of(day.withYear(most.getYear()), day.withYear(least.getYear()))))
        .flatMap(days -> days)
        .filter(day -> !day.isBefore(least) && !day.isAfter(most))
        .distinct()
        .toList();
  }

  /** Whether some day within a span may have been meant. */
  public static boolean fits(LocalDate typed, LocalDate least, LocalDate most) {
    return !meant(typed, least, most).isEmpty();
  }

  /** The days a month off; none of a year too far away for a month to reach the span. */
  private static Stream<LocalDate> monthOff(LocalDate typed, LocalDate least, LocalDate most) {
    return typed.getYear() < least.getYear() - 1 || typed.getYear() > most.getYear() + 1
        ? Stream.empty()
        : Stream.of(typed.plusMonths(1), typed.minusMonths(1));
  }

  private static Optional<LocalDate> exchanged(LocalDate typed) {
    try {
      return Optional.of(
          LocalDate.of(typed.getYear(), typed.getDayOfMonth(), typed.getMonthValue()));
    } catch (DateTimeException noSuchMonth) {
      return Optional.empty();
    }
  }
}
