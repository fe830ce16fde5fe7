package io.github.tiderule.engine.season;

import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;

/** A cycle's local time. */
public record Clock(ZoneId zone) {

  /** A clock hour given as a number, {@code 8.5} for half past eight; 24 is the last minute. */
  public static LocalTime hour(double hour) {
    return LocalTime.ofSecondOfDay(Math.min(Math.round(hour * 3600), 86_340));
  }

  /** So many days of 24 hours, to the second. */
  public static Duration ofDays(double days) {
    return Duration.ofSeconds(Math.round(days * 86_400));
  }

  public OffsetDateTime offset(Instant at) {
    return at.atZone(zone).toOffsetDateTime();
  }

  /** {@code Thu 14 Jan}. */
  public Part day(Instant at) {
    return new Part.Day(at.atZone(zone).toLocalDate(), Part.DayForm.SHORT);
  }

  /** {@code Thu 14 Jan 08:00}. */
  public Part dayAndTime(Instant at) {
    return new Part.Time(offset(at), Part.TimeForm.SHORT);
  }

  /** {@code Thu 14 Jan, Sat 16 Jan and Mon 18 Jan}. */
  public Part days(List<Slot> slots) {
    return new Part.Several(
        slots.stream().map(slot -> day(slot.middle())).distinct().toList(), Part.Joint.AND);
  }

  /** {@code 08:00–12:00}. */
  public Part span(Slot slot) {
    return new Part.Inner(Sentence.of("{}–{}", clock(slot.from()), clock(slot.to())));
  }

  private Part clock(Instant at) {
    return new Part.Time(offset(at), Part.TimeForm.CLOCK);
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
