package io.github.tiderule.format.laboratory;

import io.github.tiderule.format.node.Shown;
import io.github.tiderule.format.problem.NearMiss;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** The lines of a table with the cells that are wanted of them. */
record Table(List<Row> rows) {

  /** One line; parts without a column, and empty cells, are absent. */
  record Row(int line, Map<Columns.Part, String> cells) {

    @Nullable String cell(Columns.Part part) {
      return cells.get(part);
    }
  }

  private static final char[] SEPARATORS = {',', ';', '\t'};

  /** How many lines are read. */
  static final int MOST_ROWS = 500;

  /** The table; empty, with problems noted, when the text is none that has the columns. */
  static Optional<Table> read(String text, Columns columns, Pointer where, Problems problems) {
    if (text.isBlank()) {
      problems.add(where, ProblemCode.EMPTY_FILE, "there is nothing in it");
      return Optional.empty();
    }
    List<String> widest = List.of();
    for (char separator : SEPARATORS) {
      List<List<String>> lines = lines(text, separator);
      List<String> header = lines.isEmpty() ? List.of() : lines.get(0);
      if (header.containsAll(columns.names().values())) {
        return rows(lines, header, columns, where, problems);
      }
      widest = header.size() > widest.size() ? header : widest;
    }
    for (String name : columns.names().values().stream().sorted().toList()) {
      if (!widest.contains(name)) {
        String near =
            NearMiss.of(name, widest).map(one -> "Maybe " + Shown.quoted(one) + "? ").orElse("");
        problems.add(
            where,
            ProblemCode.MISSING_FIELD,
            "the first line has no column " + Shown.quoted(name),
            near + "It has: " + String.join(", ", widest.stream().map(Shown::quoted).toList()));
      }
    }
    return Optional.empty();
  }

  /** Empty where the text is no table with that separator. */
  private static List<List<String>> lines(String text, char separator) {
    CSVFormat format =
        CSVFormat.RFC4180.builder().setDelimiter(separator).setIgnoreEmptyLines(false).get();
    List<List<String>> lines = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(text, format)) {
      for (CSVRecord line : parser) {
        lines.add(line.stream().map(String::strip).toList());
      }
    } catch (IOException | UncheckedIOException | IllegalStateException e) {
      return List.of();
    }
    return lines;
  }

  private static Optional<Table> rows(
      List<List<String>> lines,
      List<String> header,
      Columns columns,
      Pointer where,
      Problems problems) {
    for (String name : columns.names().values()) {
      if (header.indexOf(name) != header.lastIndexOf(name)) {
        problems.add(
            where, ProblemCode.DUPLICATE_KEY, "two columns are named " + Shown.quoted(name));
        return Optional.empty();
      }
    }
    List<Row> rows = new ArrayList<>();
    int line = 1;
    for (List<String> cells : lines) {
      Map<Columns.Part, String> wanted = new EnumMap<>(Columns.Part.class);
      columns
          .names()
          .forEach(
              (part, name) -> {
                int place = header.indexOf(name);
                if (place < cells.size() && !cells.get(place).isEmpty()) {
                  wanted.put(part, cells.get(place));
                }
              });
      if (line > 1 && cells.stream().anyMatch(cell -> !cell.isEmpty())) {
        rows.add(new Row(line, wanted));
      }
      // a quoted cell may run over several lines
      line += 1 + (int) String.join("", cells).chars().filter(c -> c == '\n').count();
    }
    if (rows.isEmpty()) {
      problems.add(
          where, ProblemCode.EMPTY_FILE, "there is no line below the names of the columns");
      return Optional.empty();
    }
    if (rows.size() > MOST_ROWS) {
      problems.add(
          where,
          ProblemCode.TOO_MANY,
          "it has " + rows.size() + " lines; " + MOST_ROWS + " are the most");
      return Optional.empty();
    }
    return Optional.of(new Table(rows));
  }
}
