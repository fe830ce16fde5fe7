package io.github.tiderule.rules.parameter;

import io.github.tiderule.rules.parameter.OverlayFault.Kind;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * Reads a local protocol: a table as comma-separated values (RFC 4180) with the heading {@code
 * id,value,reason,by,since}, like the parameter files themselves, so that a vet can keep it in a
 * spreadsheet and the rules need know no other format. Lines that begin with {@code #} are notes.
 */
public final class OverlayReader {

  /** The heading. */
  public static final List<String> HEADING = List.of("id", "value", "reason", "by", "since");

  private static final int LONGEST_TEXT = 300;
  private static final int LONGEST_NUMBER = 40;
  private static final int LONGEST_SHOWN = 60;

  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setIgnoreEmptyLines(true).setCommentMarker('#').get();

  private final Parameters parameters;
  private final List<OverlayFault> faults = new ArrayList<>();
  private final Map<String, Integer> seen = new HashMap<>();
  private final List<Overlay.Change> changes = new ArrayList<>();

  private OverlayReader(Parameters parameters) {
    this.parameters = parameters;
  }

  /**
   * Reads a local protocol and holds it against the parameters' ranges.
   *
   * @param name what it is called
   * @param parameters as they come with the rules
   */
  public static OverlayReading read(String name, String text, Parameters parameters) {
    return new OverlayReader(parameters).read(name, text);
  }

  private OverlayReading read(String name, String text) {
    String table = text.startsWith("\uFEFF") ? text.substring(1) : text;
    try (CSVParser parser = CSVParser.parse(new StringReader(table), FORMAT)) {
      rows(parser);
    } catch (UncheckedIOException | IOException e) {
      add(0, "", Kind.NOT_A_TABLE, "", "it is not a table of comma-separated values");
    }
    if (!faults.isEmpty()) {
      return new OverlayReading.Refused(faults);
    }
    changes.sort(Comparator.comparing(Overlay.Change::id));
    return new OverlayReading.Read(Overlay.of(name, text, changes));
  }

  private void rows(CSVParser parser) {
    boolean heading = true;
    boolean any = false;
    for (CSVRecord row : parser) {
      if (heading) {
        heading = false;
        if (!heading(row)) {
          return;
        }
      } else {
        any = true;
        row(row, line(parser, row));
      }
    }
    if (heading || !any) {
      add(0, "", Kind.EMPTY, "", "it changes no parameter");
    }
  }

  /** The line a row that was just read begins on; a cell in quotes may run over several. */
  private static int line(CSVParser parser, CSVRecord row) {
    long breaks = row.stream().mapToLong(cell -> cell.lines().skip(1).count()).sum();
    return (int) (parser.getCurrentLineNumber() - breaks);
  }

  private boolean heading(CSVRecord row) {
    List<String> names = row.stream().map(String::strip).toList();
    if (names.equals(HEADING)) {
      return true;
    }
    String found = String.join(",", names);
    add(
        1,
        "",
        Kind.WRONG_HEADING,
        found,
        "the heading is \"" + shown(found) + "\", not \"" + String.join(",", HEADING) + "\"");
    return false;
  }

  private void row(CSVRecord row, int line) {
    if (row.size() != HEADING.size()) {
      add(
          line,
          "",
          Kind.WRONG_CELL_COUNT,
          "",
          "there are " + row.size() + " cells, not " + HEADING.size());
      return;
    }
    int before = faults.size();
    @Nullable Parameter parameter = parameter(row.get(0).strip(), line);
    @Nullable Double value = value(row.get(1).strip(), line, parameter);
    String reason = text(row.get(2).strip(), "reason", line);
    String by = text(row.get(3).strip(), "by", line);
    @Nullable LocalDate since = date(row.get(4).strip(), line);
    if (faults.size() == before && parameter != null && value != null && since != null) {
      changes.add(
          new Overlay.Change(
              parameter.id(), parameter.value(), value, parameter.unit(), reason, by, since));
    }
  }

  private @Nullable Parameter parameter(String id, int line) {
    @Nullable Parameter parameter = parameters.byId().get(id);
    if (parameter == null) {
      add(line, "id", Kind.UNKNOWN_PARAMETER, id, "there is no parameter \"" + shown(id) + "\"");
      return null;
    }
    @Nullable Integer earlier = seen.putIfAbsent(id, line);
    if (earlier != null) {
      add(
          line,
          "id",
          Kind.REPEATED_PARAMETER,
          id,
          id + " is changed on line " + earlier + " already");
    }
    return parameter;
  }

  private @Nullable Double value(String text, int line, @Nullable Parameter parameter) {
    double value = number(text);
    if (!Double.isFinite(value)) {
      add(line, "value", Kind.NOT_A_NUMBER, text, "\"" + shown(text) + "\" is not a finite number");
      return null;
    }
    if (parameter != null && !(value >= parameter.min() && value <= parameter.max())) {
      add(
          line,
          "value",
          Kind.OUT_OF_RANGE,
          text,
          parameter.id()
              + " is "
              + shown(text)
              + ", outside "
              + plain(parameter.min())
              + " to "
              + plain(parameter.max())
              + " "
              + parameter.unit());
    }
    return value;
  }

  /** A decimal number; not-a-number for anything else, such as hexadecimal or words. */
  private static double number(String text) {
    try {
      return text.length() > LONGEST_NUMBER ? Double.NaN : new BigDecimal(text).doubleValue();
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private String text(String text, String column, int line) {
    if (text.isEmpty()) {
      add(line, column, Kind.EMPTY_TEXT, "", column + " is empty");
    } else if (text.length() > LONGEST_TEXT) {
      add(
          line,
          column,
          Kind.TOO_LONG,
          "",
          column + " has " + text.length() + " characters, more than " + LONGEST_TEXT);
    } else if (text.codePoints().anyMatch(OverlayReader::hidden)) {
      add(line, column, Kind.ILLEGAL_CHARACTER, "", column + " holds a character one cannot see");
    }
    return text;
  }

  private static boolean hidden(int character) {
    return switch (Character.getType(character)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          true;
      default -> false;
    };
  }

  private @Nullable LocalDate date(String text, int line) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      add(line, "since", Kind.NOT_A_DATE, text, "since is \"" + shown(text) + "\", not a date");
      return null;
    }
  }

  /** A text as a message shows it: short, and with what one cannot see written out. */
  private static String shown(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .limit(LONGEST_SHOWN)
        .forEach(
            character -> {
              if (hidden(character)) {
                shown.append(String.format(Locale.ROOT, "<U+%04X>", character));
              } else {
                shown.appendCodePoint(character);
              }
            });
    return text.codePointCount(0, text.length()) > LONGEST_SHOWN ? shown + "…" : shown.toString();
  }

  private void add(int line, String column, Kind kind, String given, String message) {
    faults.add(new OverlayFault(line, column, kind, given, message));
  }
}
