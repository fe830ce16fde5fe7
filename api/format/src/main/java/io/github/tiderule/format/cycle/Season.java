package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.problem.ProblemCode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The season a file speaks of: which dates can belong to it.
 *
 * @param asOf the moment of the advice; absent when the file has none that can be read
 * @param statedZone absent when the file has none that can be read
 */
record Season(@Nullable Instant asOf, @Nullable ZoneId statedZone) {

  private static final int FIRST_YEAR = 2000;
  private static final int LAST_YEAR = 2060;

  /** An observation may lie this far ahead; a rule holds it with a question. */
  static final int DAYS_AHEAD = 60;

  /** An observation may lie this far back. */
  static final int DAYS_BACK = 400;

  private static final int NO_LIMIT = 366 * 100;

  /** An instant of this season. */
  @Nullable Instant instant(Field field) {
    return within(field, field.instant(statedZone), DAYS_BACK, DAYS_AHEAD);
  }

  /** An instant in a year that makes sense. */
  @Nullable Instant anyInstant(Field field) {
    return within(field, field.instant(statedZone), NO_LIMIT, NO_LIMIT);
  }

  private @Nullable Instant within(Field field, @Nullable Instant at, int back, int ahead) {
    if (at == null) {
      return null;
    }
    return isPlausible(field, at.atZone(zone()).toLocalDate(), back, ahead) ? at : null;
  }

  /** A day of this season that is not ahead. */
  @Nullable LocalDate pastDay(Field field) {
    LocalDate day = field.day();
    return day != null && isPlausible(field, day, DAYS_BACK, 0) ? day : null;
  }

  /** A day in a year that makes sense that is not ahead. */
  @Nullable LocalDate anyPastDay(Field field) {
    LocalDate day = field.day();
    return day != null && isPlausible(field, day, NO_LIMIT, 0) ? day : null;
  }

  /** A day in a year that makes sense. */
  @Nullable LocalDate anyDay(Field field) {
    LocalDate day = field.day();
    return day != null && isPlausible(field, day, NO_LIMIT, NO_LIMIT) ? day : null;
  }

  /** The zone days are counted in. */
  private ZoneId zone() {
    return statedZone == null ? ZoneOffset.UTC : statedZone;
  }

  /** An instant in local words, for messages. */
  String words(Instant at) {
    return at.atZone(zone()).toOffsetDateTime().toString();
  }

  private @Nullable LocalDate today() {
    return asOf == null ? null : asOf.atZone(zone()).toLocalDate();
  }

  private boolean isPlausible(Field field, LocalDate day, int back, int ahead) {
    if (day.getYear() < FIRST_YEAR || day.getYear() > LAST_YEAR) {
      refuse(
          field,
          day,
          back,
          ahead,
          field.name() + " is in " + day.getYear() + ", outside 2000 to 2060");
      return false;
    }
    LocalDate today = today();
    if (today == null) {
      return true;
    }
    long daysAhead = ChronoUnit.DAYS.between(today, day);
    if (daysAhead > ahead) {
      String place = ahead == 0 ? " lies after " : " lies " + daysAhead + " days after ";
      refuse(field, day, back, ahead, field.name() + " (" + day + ")" + place + "asOf");
      return false;
    }
    if (-daysAhead > back) {
      refuse(
          field,
          day,
          back,
          ahead,
          field.name() + " (" + day + ") lies " + -daysAhead + " days before asOf");
      return false;
    }
    return true;
  }

  private void refuse(Field field, LocalDate day, int back, int ahead, String message) {
    Optional<Integer> year = yearMeant(day, back, ahead);
    if (year.isPresent()) {
      field.refuse(ProblemCode.IMPLAUSIBLE_DATE, message, "Maybe " + year.get() + "?");
    } else {
      field.refuse(ProblemCode.IMPLAUSIBLE_DATE, message);
    }
  }

  /** The year nearest to the advice in which the day would be plausible. */
  private Optional<Integer> yearMeant(LocalDate day, int back, int ahead) {
    LocalDate today = today();
    if (today == null || back == NO_LIMIT) {
      return Optional.empty();
    }
    return IntStream.of(today.getYear(), today.getYear() - 1, today.getYear() + 1)
        .filter(
            year -> {
              long days = ChronoUnit.DAYS.between(today, day.withYear(year));
              return days <= ahead && -days <= back;
            })
        .boxed()
        .min(
            (one, other) ->
                Long.compare(
                    Math.abs(ChronoUnit.DAYS.between(today, day.withYear(one))),
                    Math.abs(ChronoUnit.DAYS.between(today, day.withYear(other)))));
  }
}
