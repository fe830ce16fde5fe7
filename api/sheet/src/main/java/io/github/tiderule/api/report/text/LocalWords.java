package io.github.tiderule.api.report.text;

import io.github.tiderule.api.words.Texts;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Dates and times in words. Names of days and months are set here and not asked of the machine, so
 * that a report reads the same everywhere.
 */
public final class LocalWords {

  private static final Texts TEXTS = Texts.ofReports();

  private static final List<String> DAYS = List.of("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun");
  private static final List<String> MONTHS =
      List.of("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec");

  private LocalWords() {}

  /** As in {@code Thu 14 Jan 2027}. */
  public static String day(LocalDate day) {
    return shortDay(day) + " " + day.getYear();
  }

  /** As in {@code Thu 14 Jan}. */
  public static String shortDay(LocalDate day) {
    return DAYS.get(day.getDayOfWeek().getValue() - 1)
        + " "
        + day.getDayOfMonth()
        + " "
        + MONTHS.get(day.getMonthValue() - 1);
  }

  /** As in {@code Jan 2027}. */
  public static String monthAndYear(LocalDate day) {
    return MONTHS.get(day.getMonthValue() - 1) + " " + day.getYear();
  }

  /** As in {@code 08:00}. */
  public static String clock(OffsetDateTime at) {
    return String.format(Locale.ROOT, "%02d:%02d", at.getHour(), at.getMinute());
  }

  /** As in {@code Thu 14 Jan 2027, 08:00}. */
  public static String moment(OffsetDateTime at) {
    return day(at.toLocalDate()) + ", " + clock(at);
  }

  /** As in {@code Thu 14 Jan, 08:00}, to the nearest hour: an estimate has no minutes. */
  public static String about(OffsetDateTime at) {
    OffsetDateTime hour = at.plusMinutes(30).truncatedTo(ChronoUnit.HOURS);
    return shortDay(hour.toLocalDate()) + ", " + clock(hour);
  }

  /** As in {@code 08:00–12:00}; the second day is named where there is one. */
  public static String window(OffsetDateTime from, OffsetDateTime to) {
    if (from.toLocalDate().equals(to.toLocalDate())) {
      return clock(from) + "–" + clock(to);
    }
    boolean midnight =
        to.getHour() == 0
            && to.getMinute() == 0
            && to.toLocalDate().equals(from.toLocalDate().plusDays(1));
    return midnight
        ? clock(from) + "–24:00"
        : clock(from) + "–" + clock(to) + " " + shortDay(to.toLocalDate());
  }

  /** Several moments, one after the other. */
  public static String moments(List<OffsetDateTime> all) {
    return all.stream()
        .map(LocalWords::moment)
        .collect(Collectors.joining(TEXTS.say("report.and")));
  }
}
