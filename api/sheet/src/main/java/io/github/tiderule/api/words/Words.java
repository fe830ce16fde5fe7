package io.github.tiderule.api.words;

import java.text.DecimalFormatSymbols;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Dates, clock times and numbers in the order and with the marks of somebody's country, with
 * English names. Names of months are written out, so that no date can be read two ways.
 */
public final class Words {

  private static final Locale ENGLISH = Locale.ENGLISH;

  /** A day as reports write it, with or without its year and clock time. */
  private static final Pattern DAY =
      Pattern.compile(
          "\\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun) (\\d{1,2}) (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct"
              + "|Nov|Dec)( \\d{4})?\\b");

  private static final Pattern CLOCK = Pattern.compile("\\b([01]\\d|2[0-3]):([0-5]\\d)\\b");
  private static final Pattern NUMBER =
      Pattern.compile(
          "(?<![\\w.,])\\d{1,3}(?:,\\d{3})+(?![\\w,])|(?<![\\w.,])(?<![A-Za-z]-)\\d+\\.\\d+(?![\\w]|\\.\\d)");

  private static final String MONTHS = "JanFebMarAprMayJunJulAugSepOctNovDec";
  private static final int MONTH_LETTERS = 3;

  private final Locale locale;
  private final DateTimeFormatter day;
  private final DateTimeFormatter shortDay;
  private final DateTimeFormatter clock;
  private final char decimalMark;
  private final char groupMark;
  private final boolean asWritten;

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
    DecimalFormatSymbols marks = DecimalFormatSymbols.getInstance(locale);
    this.decimalMark = marks.getDecimalSeparator();
    this.groupMark = marks.getGroupingSeparator();
    this.asWritten = !monthFirst && !halfDays && decimalMark == '.' && groupMark == ',';
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

  /**
   * A sentence of a report with its dates, clock times and numbers in the order and with the marks
   * of the country.
   */
  public String localised(String sentence) {
    if (asWritten) {
      return sentence;
    }
    String days =
        DAY.matcher(sentence)
            .replaceAll(
                found -> {
                  boolean withYear = found.group(3) != null;
                  // without a year its weekday stands as it is written
                  int year = withYear ? Integer.parseInt(found.group(3).strip()) : 2000;
                  LocalDate on =
                      LocalDate.of(
                          year,
                          MONTHS.indexOf(found.group(2)) / MONTH_LETTERS + 1,
                          Integer.parseInt(found.group(1)));
                  return withYear
                      ? day(on)
                      : found.group().substring(0, MONTH_LETTERS)
                          + shortDay(on).substring(MONTH_LETTERS);
                });
    String clocks = CLOCK.matcher(days).replaceAll(found -> clock(LocalTime.parse(found.group())));
    return NUMBER.matcher(clocks).replaceAll(found -> marked(found.group()));
  }

  private String marked(String number) {
    String marked =
        number.indexOf(',') >= 0
            ? number.replace(',', groupMark)
            : number.replace('.', decimalMark);
    return Matcher.quoteReplacement(marked);
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
