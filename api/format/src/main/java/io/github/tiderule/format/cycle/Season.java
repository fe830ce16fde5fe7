package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.validation.SeasonDates;
import io.github.tiderule.format.node.Field;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * Reads the dates of the season a file speaks of, and refuses those that cannot belong to it.
 *
 * @param dates which dates can
 */
record Season(SeasonDates dates) {

  /**
   * A season.
   *
   * @param asOf the moment of the advice; absent when the file has none that can be read
   * @param zone absent when the file has none that can be read
   */
  static Season of(@Nullable Instant asOf, @Nullable ZoneId zone) {
    return new Season(new SeasonDates(asOf, zone));
  }

  /** An instant of this season. */
  @Nullable Instant instant(Field field) {
    Instant at = field.instant(dates.statedZone());
    return at == null ? null : field.accepted(at, dates.ofSeason(field.name(), at));
  }

  /** An instant in a year that makes sense. */
  @Nullable Instant anyInstant(Field field) {
    Instant at = field.instant(dates.statedZone());
    return at == null ? null : field.accepted(at, dates.ofAnyYear(field.name(), at));
  }

  /** A moment given from elsewhere instead of a field's own. */
  @Nullable Instant instead(Field field, Instant at) {
    return field.accepted(at, dates.ofAnyYear(field.name(), at));
  }

  /** A day of this season that is not ahead. */
  @Nullable LocalDate pastDay(Field field) {
    LocalDate day = field.day();
    return day == null ? null : field.accepted(day, dates.pastOfSeason(field.name(), day));
  }

  /** A day in a year that makes sense that is not ahead. */
  @Nullable LocalDate anyPastDay(Field field) {
    LocalDate day = field.day();
    return day == null ? null : field.accepted(day, dates.past(field.name(), day));
  }

  /** A day in a year that makes sense. */
  @Nullable LocalDate anyDay(Field field) {
    LocalDate day = field.day();
    return day == null ? null : field.accepted(day, dates.ofAnyYear(field.name(), day));
  }
}
