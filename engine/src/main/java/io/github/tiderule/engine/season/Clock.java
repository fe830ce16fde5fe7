package io.github.tiderule.engine.season;

import io.github.tiderule.engine.days.Slot;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** A cycle's local time. */
public record Clock(ZoneId zone) {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

  private static final DateTimeFormatter HOUR =
      DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

  /** A clock hour given as a number, {@code 8.5} for half past eight; 24 is the last minute. */
  public static LocalTime hour(double hour) {
    return LocalTime.ofSecondOfDay(Math.min(Math.round(hour * 3600), 86_340));
  }

  public OffsetDateTime offset(Instant at) {
    return at.atZone(zone).toOffsetDateTime();
  }

  /** {@code Thu 14 Jan}. */
  public String day(Instant at) {
    return DAY.format(at.atZone(zone));
  }

  /** {@code Thu 14 Jan 08:00}. */
  public String dayAndTime(Instant at) {
    return DAY_AND_TIME.format(at.atZone(zone));
  }

  /** {@code Thu 14 Jan, Sat 16 Jan and Mon 18 Jan}. */
  public String days(List<Slot> slots) {
    List<String> days = slots.stream().map(slot -> day(slot.middle())).distinct().toList();
    int last = days.size() - 1;
    return last < 1
        ? String.join("", days)
        : String.join(", ", days.subList(0, last)) + " and " + days.get(last);
  }

  /** {@code 08:00–12:00}. */
  public String span(Slot slot) {
    return HOUR.format(slot.from().atZone(zone)) + "–" + HOUR.format(slot.to().atZone(zone));
  }

  /** The quarter hour nearest the middle of a window, inside it. */
  public Instant quarter(Slot slot) {
    long minutes = slot.middle().getEpochSecond() / 60;
    Instant rounded = Instant.ofEpochSecond((minutes + 7) / 15 * 15 * 60);
    return rounded.isBefore(slot.from()) || rounded.isAfter(slot.to()) ? slot.middle() : rounded;
  }

  /** The first time at a clock hour, on a day that is allowed, not before an instant. */
  public Instant next(Instant earliest, LocalTime hour, List<DayOfWeek> allowed) {
    ZonedDateTime start = earliest.atZone(zone);
    ZonedDateTime at = start.toLocalDate().atTime(hour).atZone(zone);
    while (at.toInstant().isBefore(earliest)
        || !(allowed.isEmpty() || allowed.contains(at.getDayOfWeek()))) {
      at = at.toLocalDate().plusDays(1).atTime(hour).atZone(zone);
    }
    return at.toInstant();
  }
}
