package io.github.tiderule.cases.pairs;

import io.github.tiderule.rules.fact.assay.Method;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Two methods that were compared on the same blood.
 *
 * @param intercept of the second's reading on the first's, ng/mL
 * @param slope of it
 * @param status {@code held} or {@code missed}
 */
public record PairedSet(
    String name,
    String source,
    String read,
    Method first,
    Method second,
    double intercept,
    double slope,
    String status,
    String note) {

  /**
   * The sets of a file.
   *
   * @throws UncheckedIOException if it cannot be read
   */
  public static List<PairedSet> read(Path file) {
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader reader = Files.newBufferedReader(file);
        CSVParser parser = CSVParser.parse(reader, format)) {
      return parser.getRecords().stream().map(PairedSet::of).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static PairedSet of(CSVRecord row) {
    return new PairedSet(
        row.get("set"),
        row.get("source"),
        row.get("read"),
        method(row.get("first")),
        method(row.get("second")),
        Double.parseDouble(row.get("intercept")),
        Double.parseDouble(row.get("slope")),
        row.get("status"),
        row.get("note"));
  }

  private static Method method(String word) {
    return Arrays.stream(Method.values())
        .filter(method -> method.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  /** What the second reads where the first reads so, ng/mL. */
  double second(double reading) {
    return Math.max(intercept + slope * reading, 0.2 * reading);
  }
}
