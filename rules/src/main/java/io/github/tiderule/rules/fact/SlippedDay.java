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
    return Stream.concat(
            Stream.of(
                typed.withYear(most.getYear()),
                typed.withYear(least.getYear()),
                typed.plusMonths(1),
                typed.minusMonths(1)),
            exchanged.stream()
                .flatMap(
                    day -> Stream.of(day.withYear(most.getYear()), day.withYear(least.getYear()))))
        .filter(day -> !day.isBefore(least) && !day.isAfter(most))
        .distinct()
        .toList();
  }

  /** Whether some day within a span may have been meant. */
  public static boolean fits(LocalDate typed, LocalDate least, LocalDate most) {
    return !meant(typed, least, most).isEmpty();
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
