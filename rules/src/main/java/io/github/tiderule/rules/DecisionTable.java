package io.github.tiderule.rules;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Writes a decision table out as the rules it stands for.
 *
 * <p>The build compiles the table itself; this gives the rule book, the count and the checks the
 * same rules as text. A table has one block that begins with {@code RuleTable}: a row of column
 * kinds, an empty row, a row of snippets with {@code $param}, a row of headings, then one row for
 * each rule up to an empty row. An empty cell leaves its snippet out.
 */
final class DecisionTable {

  /** What the name of a decision table's file ends with. */
  static final String SUFFIX = ".drl.csv";

  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setIgnoreEmptyLines(false).get();
  private static final String BLOCK = "RuleTable";
  private static final String PLACE = "$param";
  private static final int SNIPPETS = 3;
  private static final int FIRST_RULE = 5;

  private final CSVRecord kinds;
  private final CSVRecord snippets;

  private DecisionTable(CSVRecord kinds, CSVRecord snippets) {
    this.kinds = kinds;
    this.snippets = snippets;
  }

  /**
   * The rules of a table in the rule language: its notes as a heading, its imports, its globals,
   * its rules.
   *
   * @param text the table as comma-separated values
   * @throws IllegalStateException if the text holds no table, or one of another layout
   */
  static String asRules(String text) {
    List<CSVRecord> rows = rows(text);
    int start = 0;
    while (start < rows.size() && !rows.get(start).get(0).startsWith(BLOCK)) {
      start++;
    }
    if (start + FIRST_RULE >= rows.size()) {
      throw new IllegalStateException("no decision table in: " + text);
    }
    if (!blank(rows.get(start + 2))) {
      throw new IllegalStateException("patterns stand in the snippets, not above them: " + text);
    }
    DecisionTable table = new DecisionTable(rows.get(start + 1), rows.get(start + SNIPPETS));
    StringBuilder rules = new StringBuilder(heading(rows.subList(0, start)));
    for (CSVRecord row : rows.subList(start + FIRST_RULE, rows.size())) {
      if (blank(row)) {
        break;
      }
      rules.append(table.rule(row));
    }
    return rules.toString();
  }

  private static String heading(List<CSVRecord> rows) {
    StringBuilder heading = new StringBuilder();
    for (CSVRecord row : rows) {
      if (row.size() > 1 && row.get(0).equals("Notes")) {
        heading.append("// ").append(row.get(1)).append("\n\n");
      } else if (row.size() > 1 && row.get(0).equals("Import")) {
        row.get(1)
            .lines()
            .flatMap(line -> Stream.of(line.split(",", -1)))
            .map(String::strip)
            .forEach(name -> heading.append("import ").append(name).append('\n'));
      } else if (row.size() > 1 && row.get(0).equals("Variables")) {
        heading.append("\nglobal ").append(row.get(1)).append('\n');
      }
    }
    return heading.append('\n').toString();
  }

  private static List<CSVRecord> rows(String text) {
    try (CSVParser parser = CSVParser.parse(new StringReader(text), FORMAT)) {
      return parser.getRecords();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean blank(CSVRecord row) {
    return row.stream().allMatch(String::isBlank);
  }

  private String rule(CSVRecord row) {
    return lines("NAME", row).replaceFirst("\\s*(.+)\\n", "rule \"$1\"\n")
        + lines("METADATA", row)
        + "when\n"
        + lines("CONDITION", row)
        + "then\n"
        + lines("ACTION", row)
        + "end\n\n";
  }

  private String lines(String kind, CSVRecord row) {
    StringBuilder lines = new StringBuilder();
    for (int column = 0; column < row.size(); column++) {
      String cell = row.get(column).strip();
      if (kinds.get(column).equals(kind) && !cell.isEmpty()) {
        String snippet = kind.equals("NAME") ? PLACE : snippets.get(column);
        String mark = kind.equals("METADATA") ? "@" : "";
        lines.append("    ").append(mark).append(snippet.replace(PLACE, cell)).append('\n');
      }
    }
    return lines.toString();
  }
}
