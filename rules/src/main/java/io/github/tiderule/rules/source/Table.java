package io.github.tiderule.rules.source;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** A table that comes with the rules: comma-separated (RFC 4180), with a heading row. */
public final class Table {

  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setHeader()
          .setSkipHeaderRecord(true)
          .setIgnoreEmptyLines(true)
          .setCommentMarker('#')
          .get();

  private final List<CSVRecord> rows;

  private Table(List<CSVRecord> rows) {
    this.rows = rows;
  }

  /**
   * Reads a table from the class path.
   *
   * @param resource absolute name, with a leading slash
   * @throws IllegalStateException if there is no such resource
   */
  public static Table of(String resource) {
    try (CSVParser parser = CSVParser.parse(new StringReader(text(resource)), FORMAT)) {
      return new Table(parser.getRecords());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The text of a resource of the rules.
   *
   * @throws IllegalStateException if there is no such resource
   */
  public static String text(String resource) {
    try (InputStream in = Table.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the rules lack " + resource);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rows, in order. */
  public List<CSVRecord> rows() {
    return rows;
  }
}
