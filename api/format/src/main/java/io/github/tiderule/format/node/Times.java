package io.github.tiderule.format.node;

import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Dates and times as a document writes them (RFC 3339), and near misses of them. */
final class Times {

  private static final Pattern INSTANT =
      Pattern.compile(
          "\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(\\.\\d{1,9})?(Z|[+-]\\d{2}:\\d{2})");
  private static final Pattern LOOSE_INSTANT =
      Pattern.compile(
          "(\\d{4})-(\\d{1,2})-(\\d{1,2})[Tt ]\\s*(\\d{1,2}):(\\d{2})(?::(\\d{2})(?:\\.\\d+)?)?"
              + "\\s*([Zz]|[+-]\\d{2}(?::?\\d{2})?)?");
  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
  private static final Pattern DAY_FIRST =
      Pattern.compile("(\\d{1,2})\\.\\s?(\\d{1,2})\\.\\s?(\\d{4})");
  private static final Pattern TIME = Pattern.compile("\\d{2}:\\d{2}");
  private static final DateTimeFormatter WRITTEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX");

  private Times() {}

  static @Nullable Instant instant(
      String name, String text, @Nullable ZoneId zone, Pointer at, Problems problems) {
    if (INSTANT.matcher(text).matches()) {
      try {
        return OffsetDateTime.parse(text).toInstant();
      } catch (DateTimeException e) {
        problems.add(
            at,
            ProblemCode.NOT_AN_INSTANT,
            name + " is " + Shown.quoted(text) + ", which no calendar or clock shows");
        return null;
      }
    }
    Matcher loose = LOOSE_INSTANT.matcher(text.strip());
    boolean like = loose.matches();
    Optional<String> meant = like ? completed(loose, zone) : Optional.empty();
    boolean lacksOffset = like && loose.group(7) == null;
    ProblemCode code = lacksOffset ? ProblemCode.MISSING_OFFSET : ProblemCode.NOT_AN_INSTANT;
    String message =
        name
            + " is "
            + Shown.quoted(text)
            + (lacksOffset
                ? ", which lacks the offset from UTC"
                : ", which is not a date and time with an offset");
    if (meant.isPresent()) {
      problems.add(at, code, message, "Maybe " + meant.get() + "?");
    } else {
      problems.add(at, code, message);
    }
    return null;
  }

  private static Optional<String> completed(Matcher loose, @Nullable ZoneId zone) {
    String offset = loose.group(7);
    if (offset == null && zone == null) {
      return Optional.empty();
    }
    try {
      String seconds = loose.group(6);
      LocalDateTime local =
          LocalDateTime.of(
              Integer.parseInt(loose.group(1)),
              Integer.parseInt(loose.group(2)),
              Integer.parseInt(loose.group(3)),
              Integer.parseInt(loose.group(4)),
              Integer.parseInt(loose.group(5)),
              seconds == null ? 0 : Integer.parseInt(seconds));
      OffsetDateTime whole =
          zone != null && offset == null
              ? local.atZone(zone).toOffsetDateTime()
              : local.atOffset(ZoneOffset.of(String.valueOf(offset).toUpperCase(Locale.ROOT)));
      return Optional.of(WRITTEN.format(whole));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  static @Nullable LocalDate day(String name, String text, Pointer at, Problems problems) {
    if (DAY.matcher(text).matches()) {
      try {
        return LocalDate.parse(text);
      } catch (DateTimeException e) {
        problems.add(
            at,
            ProblemCode.NOT_A_DATE,
            name + " is " + Shown.quoted(text) + ", which no calendar shows");
        return null;
      }
    }
    String message = name + " is " + Shown.quoted(text) + ", which is not a date";
    Optional<LocalDate> meant = dayFirst(text);
    if (meant.isPresent()) {
      problems.add(at, ProblemCode.NOT_A_DATE, message, "Maybe " + meant.get() + "?");
    } else {
      problems.add(at, ProblemCode.NOT_A_DATE, message);
    }
    return null;
  }

  /** Only with dots: with strokes, half the world writes the month first. */
  private static Optional<LocalDate> dayFirst(String text) {
    Matcher matcher = DAY_FIRST.matcher(text.strip());
    if (!matcher.matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          LocalDate.of(
              Integer.parseInt(matcher.group(3)),
              Integer.parseInt(matcher.group(2)),
              Integer.parseInt(matcher.group(1))));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  static @Nullable LocalTime time(String name, String text, Pointer at, Problems problems) {
    if (TIME.matcher(text).matches()) {
      try {
        return LocalTime.parse(text);
      } catch (DateTimeException e) {
        // falls through to the refusal below
      }
    }
    problems.add(
        at,
        ProblemCode.NOT_A_TIME,
        name + " is " + Shown.quoted(text) + ", which is not a time of day");
    return null;
  }
}
