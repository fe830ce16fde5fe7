package io.github.tiderule.api.page.words;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;

/**
 * Dates, clock times and numbers in the order and with the marks of somebody's country, with
 * English names. Names of months are written out, so that no date can be read two ways.
 */
public final class Words {

  private static final Locale ENGLISH = Locale.ENGLISH;

  private final Locale locale;
  private final DateTimeFormatter day;
  private final DateTimeFormatter shortDay;
  private final DateTimeFormatter clock;
  private final char decimalMark;

  private Words(Locale locale) {
    String pattern =
        DateTimeFormatterBuilder.getLocalizedDateTimePattern(
            FormatStyle.SHORT, FormatStyle.SHORT, IsoChronology.INSTANCE, locale);
    boolean monthFirst = pattern.indexOf('M') < pattern.indexOf('d') && pattern.indexOf('y') != 0;
    boolean halfDays = pattern.indexOf('h') >= 0;
    this.locale = locale;
    this.day =
        DateTimeFormatter.ofPattern(monthFirst ? "EEE, MMM d, uuuu" : "EEE d MMM uuuu", ENGLISH);
    this.shortDay = DateTimeFormatter.ofPattern(monthFirst ? "EEE, MMM d" : "EEE d MMM", ENGLISH);
    this.clock = DateTimeFormatter.ofPattern(halfDays ? "h:mm a" : "HH:mm", ENGLISH);
    this.decimalMark = java.text.DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
  }

  /** For a country. */
  public static Words of(Locale locale) {
    return new Words(locale);
  }

  /** For what a browser says of whoever uses it; as in Britain where it says nothing of use. */
  public static Words ofHeader(String acceptLanguage) {
    try {
      List<Locale.LanguageRange> ranges = Locale.LanguageRange.parse(acceptLanguage);
      for (Locale.LanguageRange range : ranges) {
        Locale wanted = Locale.forLanguageTag(range.getRange());
        if (!wanted.getLanguage().isEmpty()) {
          return new Words(
              wanted.getLanguage().equals("en") && wanted.getCountry().isEmpty()
                  ? Locale.UK
                  : wanted);
        }
      }
    } catch (IllegalArgumentException e) {
      // whoever sends nonsense reads dates as most do
    }
    return new Words(Locale.UK);
  }

  /** Whose order and marks these are. */
  public Locale locale() {
    return locale;
  }

  /** As in {@code Thu 14 Jan 2027}. */
  public String day(LocalDate on) {
    return day.format(on);
  }

  /** As in {@code Thu 14 Jan}. */
  public String shortDay(LocalDate on) {
    return shortDay.format(on);
  }

  /** As in {@code 08:00}. */
  public String clock(LocalTime at) {
    return clock.format(at);
  }

  /** As in {@code Thu 14 Jan 2027, 08:00}. */
  public String moment(OffsetDateTime at) {
    return day(at.toLocalDate()) + ", " + clock(at.toLocalTime());
  }

  /** As in {@code Thu 14 Jan, 08:00}. */
  public String shortMoment(OffsetDateTime at) {
    return shortDay(at.toLocalDate()) + ", " + clock(at.toLocalTime());
  }

  /** As in {@code 08:00–14:00}; midnight at its end is written as such. */
  public String window(OffsetDateTime from, OffsetDateTime to) {
    if (from.toLocalDate().equals(to.toLocalDate())) {
      return clock(from.toLocalTime()) + "–" + clock(to.toLocalTime());
    }
    boolean midnight =
        to.toLocalTime().equals(LocalTime.MIDNIGHT)
            && to.toLocalDate().equals(from.toLocalDate().plusDays(1));
    return clock(from.toLocalTime())
        + "–"
        + (midnight ? "midnight" : clock(to.toLocalTime()) + " " + shortDay(to.toLocalDate()));
  }

  /** A number as it was written with a point, with the country's mark. */
  public String number(String written) {
    return written.replace('.', decimalMark);
  }

  /** A number without needless zeros. */
  public String number(double value) {
    return number(
        value == Math.rint(value) && Math.abs(value) < 1e15
            ? Long.toString((long) value)
            : Double.toString(value));
  }
}
