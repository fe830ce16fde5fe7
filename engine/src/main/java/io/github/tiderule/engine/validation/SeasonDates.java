package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.fact.SlippedDay;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.time.zone.ZoneRulesProvider;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Which dates can belong to a season.
 *
 * @param asOf the moment of the advice; null where there is none that can be used
 * @param statedZone the zone days are counted in; null where there is none that can be used
 */
public record SeasonDates(@Nullable Instant asOf, @Nullable ZoneId statedZone) {

  private static final int FIRST_YEAR = 2000;
  private static final int LAST_YEAR = 2060;

  /** An observation may lie this far ahead; a rule holds it with a question. */
  public static final int DAYS_AHEAD = 60;

  /** An observation may lie this far back. */
  public static final int DAYS_BACK = 400;

  /** What was meant for a season lies hardly longer ago than a pregnancy takes. */
  private static final int DAYS_OF_SEASON = 90;

  private static final int NO_LIMIT = 366 * 100;

  /** Beyond these some instants have no local day, and no year makes sense. */
  private static final Instant EARLIEST = Instant.parse("-9999-01-01T00:00:00Z");

  private static final Instant LATEST = Instant.parse("+99999-12-31T00:00:00Z");

  /** Whether the tz database has a zone of a name. */
  public static boolean isZone(String name) {
    return ZoneRulesProvider.getAvailableZoneIds().contains(name);
  }

  /** That the tz database has no zone of a name. */
  public static Violation unknownZone(String name) {
    return Violation.of(
        "zone",
        Violation.Code.UNKNOWN_ZONE,
        name,
        "zone is \"" + name + "\", which the tz database does not know");
  }

  /** Why an instant cannot be of this season: 400 days back to 60 ahead. */
  public Optional<Violation> ofSeason(String name, Instant at) {
    return implausible(name, dayOf(at), DAYS_BACK, DAYS_AHEAD);
  }

  /** Why an instant cannot be of a year that makes sense, 2000 to 2060. */
  public Optional<Violation> ofAnyYear(String name, Instant at) {
    return implausible(name, dayOf(at), NO_LIMIT, NO_LIMIT);
  }

  /** Why a day cannot be a past one of this season: 400 days back to that of the advice. */
  public Optional<Violation> pastOfSeason(String name, LocalDate day) {
    return implausible(name, day, DAYS_BACK, 0);
  }

  /** Why a day cannot be a past one: in or after 2000, not after that of the advice. */
  public Optional<Violation> past(String name, LocalDate day) {
    return implausible(name, day, NO_LIMIT, 0);
  }

  /** Why a day cannot be of a year that makes sense, 2000 to 2060. */
  public Optional<Violation> ofAnyYear(String name, LocalDate day) {
    return implausible(name, day, NO_LIMIT, NO_LIMIT);
  }

  private ZoneId zone() {
    return statedZone == null ? ZoneOffset.UTC : statedZone;
  }

  /** An instant in local words, for messages. */
  public String words(Instant at) {
    return bounded(at).atZone(zone()).toOffsetDateTime().toString();
  }

  private LocalDate dayOf(Instant at) {
    return bounded(at).atZone(zone()).toLocalDate();
  }

  private static Instant bounded(Instant at) {
    return at.isBefore(EARLIEST) ? EARLIEST : at.isAfter(LATEST) ? LATEST : at;
  }

  private @Nullable LocalDate today() {
    return asOf == null ? null : dayOf(asOf);
  }

  private Optional<Violation> implausible(String name, LocalDate day, int back, int ahead) {
    if (day.getYear() < FIRST_YEAR || day.getYear() > LAST_YEAR) {
      String message = name + " is in " + day.getYear() + ", outside 2000 to 2060";
      return Optional.of(implausible(name, day, back, ahead, message));
    }
    LocalDate today = today();
    if (today == null) {
      return Optional.empty();
    }
    long daysAhead = ChronoUnit.DAYS.between(today, day);
    if (daysAhead > ahead) {
      String place = ahead == 0 ? " lies after " : " lies " + daysAhead + " days after ";
      String message = name + " (" + day + ")" + place + "asOf";
      return Optional.of(implausible(name, day, back, ahead, message));
    }
    if (-daysAhead > back) {
      String message = name + " (" + day + ") lies " + -daysAhead + " days before asOf";
      return Optional.of(implausible(name, day, back, ahead, message));
    }
    return Optional.empty();
  }

  private Violation implausible(String name, LocalDate day, int back, int ahead, String message) {
    Violation found = Violation.of(name, Violation.Code.IMPLAUSIBLE_DATE, day, message);
    List<LocalDate> meant = meant(day, back, ahead);
    return meant.isEmpty()
        ? found
        : found.hint(
            "Maybe "
                + meant.stream().map(LocalDate::toString).collect(Collectors.joining(" or "))
                + "?");
  }

  /** Days a year or a month off, or with day and month exchanged, that would be of this season. */
  private List<LocalDate> meant(LocalDate day, int back, int ahead) {
    LocalDate today = today();
    if (today == null || (back == NO_LIMIT && ahead == NO_LIMIT)) {
      return List.of();
    }
    return SlippedDay.meant(day, today.minusDays(Math.min(back, DAYS_OF_SEASON)), today);
  }
}
