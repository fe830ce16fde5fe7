package io.github.tiderule.format.laboratory;

import io.github.tiderule.format.node.Shown;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the dates and numbers of cells, and refuses those that can mean two things. */
final class Cells {

  /** A number as JSON writes it, with the sign a laboratory prints before a limit. */
  record Amount(String digits, @Nullable String comparator) {}

  private static final Pattern AMOUNT =
      Pattern.compile("([<>]?)\\s*(\\d{1,9})(?:([.,])(\\d{1,9}))?");
  private static final Pattern MOMENT =
      Pattern.compile(
          "(?:(\\d{4})-(\\d{2})-(\\d{2})|(\\d{1,2})([./])(\\d{1,2})\\5(\\d{4}))"
              + "(?:(?:T|,?\\s+)(\\d{1,2}:\\d{2})(?::\\d{2})?(Z|[+-]\\d{2}:\\d{2})?)?");
  private static final Pattern TIME = Pattern.compile("(\\d{1,2}):(\\d{2})(?::\\d{2})?");
  private static final int THOUSAND_DIGITS = 3;

  private final Columns columns;
  private final ZoneId zone;

  Cells(Columns columns, ZoneId zone) {
    this.columns = columns;
    this.zone = zone;
  }

  Amount amount(String cell) throws Unusable {
    Matcher matcher = AMOUNT.matcher(cell.strip());
    if (!matcher.matches()) {
      throw new Unusable("the value is " + Shown.quoted(cell) + ", not a number");
    }
    String whole = matcher.group(2);
    String mark = matcher.group(3);
    String fraction = matcher.group(4);
    if (mark != null && fraction != null) {
      Columns.Decimals decimals = columns.decimals();
      boolean comma = mark.equals(",");
      if (decimals != null && comma != (decimals == Columns.Decimals.COMMA)) {
        throw new Unusable(
            "the value is " + Shown.quoted(cell) + ", and decimals= says another mark");
      }
      if (decimals == null && fraction.length() == THOUSAND_DIGITS && !whole.matches("0+")) {
        throw new Unusable(
            "the value "
                + Shown.quoted(cell)
                + " can mean thousandths or thousands; say decimals=comma or decimals=point");
      }
    }
    String plain = whole.replaceFirst("^0+(?=\\d)", "");
    return new Amount(
        fraction == null ? plain : plain + "." + fraction,
        matcher.group(1).isEmpty() ? null : matcher.group(1));
  }

  /**
   * @param time what a column of its own says of the time of day, if there is one
   */
  Instant moment(String cell, @Nullable String time) throws Unusable {
    Matcher matcher = MOMENT.matcher(cell.strip());
    if (!matcher.matches()) {
      throw new Unusable(
          "the date is "
              + Shown.quoted(cell)
              + ", not written like 2027-03-01 08:00, 1.3.2027 08:00 or 1/3/2027 08:00");
    }
    LocalDate day = day(matcher, cell);
    String clock = matcher.group(8);
    String offset = matcher.group(9);
    if (clock == null && (time == null || time.isBlank())) {
      throw new Unusable(
          "the date "
              + Shown.quoted(cell)
              + " has no time of day; it may stand in a column of its own, named by time=");
    }
    LocalDateTime local = day.atTime(time(clock == null ? time : clock));
    if (offset != null) {
      try {
        return OffsetDateTime.of(local, ZoneOffset.of(offset)).toInstant();
      } catch (DateTimeException e) {
        throw new Unusable("the date is " + Shown.quoted(cell) + ", whose offset no clock has");
      }
    }
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.size() != 1) {
      throw new Unusable(
          "the time "
              + local
              + (offsets.isEmpty() ? " does not exist" : " comes twice")
              + " in "
              + zone
              + ", where clocks change then; write it with its offset");
    }
    return local.toInstant(offsets.get(0));
  }

  private LocalDate day(Matcher matcher, String cell) throws Unusable {
    try {
      if (matcher.group(1) != null) {
        return LocalDate.parse(matcher.group(1) + "-" + matcher.group(2) + "-" + matcher.group(3));
      }
      int first = Integer.parseInt(matcher.group(4));
      int second = Integer.parseInt(matcher.group(6));
      int year = Integer.parseInt(matcher.group(7));
      boolean dots = matcher.group(5).equals(".");
      Columns.Dates said = columns.dates();
      boolean dayFirst = said == null ? first > 12 : said == Columns.Dates.DAY_FIRST;
      if (dots || dayFirst) {
        return LocalDate.of(year, second, first);
      }
      if (said != null || second > 12 || first == second) {
        return LocalDate.of(year, first, second);
      }
    } catch (DateTimeException e) {
      throw new Unusable("the date is " + Shown.quoted(cell) + ", which no calendar shows");
    }
    throw new Unusable(
        "the date "
            + Shown.quoted(cell)
            + " can mean two days; say dates=day-first or dates=month-first");
  }

  private static LocalTime time(@Nullable String cell) throws Unusable {
    Matcher matcher = TIME.matcher(cell == null ? "" : cell.strip());
    if (matcher.matches()) {
      int hour = Integer.parseInt(matcher.group(1));
      int minute = Integer.parseInt(matcher.group(2));
      if (hour < 24 && minute < 60) {
        return LocalTime.of(hour, minute);
      }
    }
    throw new Unusable(
        "the time of day is " + Shown.quoted(String.valueOf(cell)) + ", not like 08:00");
  }
}
