package io.github.tiderule.cases.published;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Published figures and what the engine makes of each. */
public final class FigureTable {

  private FigureTable() {}

  /**
   * The figures of a file.
   *
   * @throws UncheckedIOException if it cannot be read
   */
  public static List<Figure> read(Path file) {
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader reader = Files.newBufferedReader(file);
        CSVParser parser = CSVParser.parse(reader, format)) {
      return parser.getRecords().stream().map(FigureTable::figure).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Figure figure(CSVRecord row) {
    String arguments = row.get("arguments");
    return new Figure(
        row.get("id"),
        row.get("section"),
        row.get("claim"),
        row.get("source"),
        row.get("read"),
        row.get("measure"),
        arguments.isEmpty() ? List.of() : List.of(arguments.split(" ", -1)),
        number(row.get("published")),
        number(row.get("low")),
        number(row.get("high")),
        row.get("unit"),
        row.get("status"),
        row.get("note"));
  }

  private static double number(String text) {
    return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
  }

  /** What the engine makes of every figure. */
  public static List<Measured> measure(List<Figure> figures, Measures measures) {
    return figures.stream()
        .map(
            figure ->
                new Measured(
                    figure,
                    figure.testable()
                        ? measures.of(figure.measure(), figure.arguments())
                        : Double.NaN))
        .toList();
  }

  /**
   * A figure and the engine's number.
   *
   * @param number NaN where it cannot be tested
   */
  public record Measured(Figure figure, double number) {

    /** {@code reproduced}, {@code missed} or {@code untested}. */
    public String status() {
      if (!figure.testable()) {
        return "untested";
      }
      return number >= figure.low() && number <= figure.high() ? "reproduced" : "missed";
    }
  }
}
