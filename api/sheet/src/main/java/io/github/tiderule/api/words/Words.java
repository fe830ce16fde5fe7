package io.github.tiderule.api.words;

import io.github.tiderule.rules.sentence.Marks;
import java.text.DecimalFormatSymbols;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;

/**
 * Dates, clock times and numbers in the order and with the marks of somebody's country, with
 * English names. Names of months are written out, so that no date can be read two ways; they are
 * set here and not asked of the machine, so that a text reads the same everywhere.
 */
public final class Words {

  /** As reports and sheets of paper are written, whoever asked for them. */
  public static final Words REPORTS = new Words(Locale.ROOT, false, false, Marks.PLAIN, "24:00");

  private static final List<String> DAYS = List.of("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun");
  private static final List<String> MONTHS =
      List.of("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec");
  private static final int NOON = 12;

  private final Locale locale;
  private final boolean monthFirst;
  private final boolean halfDays;
  private final Marks marks;
  private final String endOfDay;

  private Words(Locale locale, boolean monthFirst, boolean halfDays, Marks marks, String endOfDay) {
    this.locale = locale;
    this.monthFirst = monthFirst;
    this.halfDays = halfDays;
    this.marks = marks;
    this.endOfDay = endOfDay;
  }

  /** For a country. */
  public static Words of(Locale locale) {
    String pattern =
        DateTimeFormatterBuilder.getLocalizedDateTimePattern(
            FormatStyle.SHORT, FormatStyle.SHORT, IsoChronology.INSTANCE, locale);
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(locale);
    return new Words(
        locale,
        pattern.indexOf('M') < pattern.indexOf('d') && pattern.indexOf('y') != 0,
        pattern.indexOf('h') >= 0,
        new Marks(symbols.getDecimalSeparator(), symbols.getGroupingSeparator()),
        "midnight");
  }

  /** For what a browser says of whoever uses it; as in Britain where it says nothing of use. */
  public static Words ofHeader(String acceptLanguage) {
    try {
      List<Locale.LanguageRange> ranges = Locale.LanguageRange.parse(acceptLanguage);
      for (Locale.LanguageRange range : ranges) {
        Locale wanted = Locale.forLanguageTag(range.getRange());
        if (!wanted.getLanguage().isEmpty()) {
          return of(
              wanted.getLanguage().equals("en") && wanted.getCountry().isEmpty()
                  ? Locale.UK
                  : wanted);
        }
      }
    } catch (IllegalArgumentException e) {
      // whoever sends nonsense reads dates as most do
    }
    return of(Locale.UK);
  }

  /** Whose order and marks these are. */
  public Locale locale() {
    return locale;
  }

  /** The marks of numbers. */
  public Marks marks() {
    return marks;
  }

  /** As in {@code Thu}. */
  public String weekday(LocalDate on) {
    return DAYS.get(on.getDayOfWeek().getValue() - 1);
  }

  /** As in {@code Jan 2027}. */
  public String monthAndYear(LocalDate on) {
    return MONTHS.get(on.getMonthValue() - 1) + " " + on.getYear();
  }

  /** As in {@code Thu 14 Jan 2027}. */
  public String day(LocalDate on) {
    return shortDay(on) + (monthFirst ? ", " : " ") + on.getYear();
  }

  /** As in {@code Thu 14 Jan}. */
  public String shortDay(LocalDate on) {
    String month = MONTHS.get(on.getMonthValue() - 1);
    return monthFirst
        ? weekday(on) + ", " + month + " " + on.getDayOfMonth()
        : weekday(on) + " " + on.getDayOfMonth() + " " + month;
  }

  /** As in {@code Thu 14 Jan}, or {@code Thu 14–Sat 16 Jan} where there are several. */
  public String days(LocalDate from, LocalDate to) {
    if (from.equals(to)) {
      return shortDay(from);
    }
    boolean once = !monthFirst && from.getMonth() == to.getMonth();
    return (once ? weekday(from) + " " + from.getDayOfMonth() : shortDay(from))
        + "–"
        + shortDay(to);
  }

  /** As in {@code 08:00}. */
  public String clock(LocalTime at) {
    if (!halfDays) {
      return two(at.getHour()) + ":" + two(at.getMinute());
    }
    int hour = at.getHour() % NOON;
    return (hour == 0 ? NOON : hour)
        + ":"
        + two(at.getMinute())
        + (at.getHour() < NOON ? " AM" : " PM");
  }

  private static String two(int number) {
    return number < 10 ? "0" + number : Integer.toString(number);
  }

  /** As in {@code 08:00}. */
  public String clock(OffsetDateTime at) {
    return clock(at.toLocalTime());
  }

  /** As in {@code Thu 14 Jan 2027, 08:00}. */
  public String moment(OffsetDateTime at) {
    return day(at.toLocalDate()) + ", " + clock(at);
  }

  /** As in {@code Thu 14 Jan, 08:00}. */
  public String shortMoment(OffsetDateTime at) {
    return shortDay(at.toLocalDate()) + ", " + clock(at);
  }

  /** As in {@code Thu 14 Jan, 08:00}, to the nearest hour: an estimate has no minutes. */
  public String about(OffsetDateTime at) {
    return shortMoment(at.plusMinutes(30).truncatedTo(ChronoUnit.HOURS));
  }

  /**
   * As in {@code 08:00–14:00}; midnight at its end is written as such, and a second day is named.
   */
  public String window(OffsetDateTime from, OffsetDateTime to) {
    if (from.toLocalDate().equals(to.toLocalDate())) {
      return clock(from) + "–" + clock(to);
    }
    boolean midnight =
        to.getHour() == 0
            && to.getMinute() == 0
            && to.toLocalDate().equals(from.toLocalDate().plusDays(1));
    return clock(from) + "–" + (midnight ? endOfDay : clock(to) + " " + shortDay(to.toLocalDate()));
  }

  /**
   * A number with the marks of the country.
   *
   * @param written nothing but a number, with a point and commas
   */
  public String number(String written) {
    return marks.of(written);
  }

  /** A number without needless zeros. */
  public String number(double value) {
    return number(
        value == Math.rint(value) && Math.abs(value) < 1e15
            ? Long.toString((long) value)
            : Double.toString(value));
  }

  /**
   * A number with so many decimals.
   *
   * @param format as in {@code %+.1f}
   */
  public String number(String format, double value) {
    return number(String.format(Locale.ROOT, format, value));
  }
}
