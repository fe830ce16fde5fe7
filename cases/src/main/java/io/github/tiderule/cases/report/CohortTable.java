package io.github.tiderule.cases.report;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** What the committed cohort table says, in words and plots. */
final class CohortTable {

  private static final double PER_CENT = 100;

  /** Rows of a bound, or of one method only, have no habit to plot. */
  private final List<CSVRecord> habits;

  private CohortTable(List<CSVRecord> habits) {
    this.habits = habits;
  }

  /**
   * Reads the table.
   *
   * @throws UncheckedIOException if it cannot be read
   */
  static CohortTable read(Path csv) {
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader reader = Files.newBufferedReader(csv);
        CSVParser parser = CSVParser.parse(reader, format)) {
      return new CohortTable(
          parser.getRecords().stream()
              .filter(row -> !row.get("held90").isEmpty())
              .filter(row -> !row.get("habit").startsWith("…"))
              .toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void write(Sheet sheet) {
    sheet.heading(2, "Simulated cohorts");
    sheet.paragraph(
        "Invented females drawn by a generator that is not the engine's model, sampled by several"
            + " habits; read from cohort-timeline.csv, which is made by the command in README.md."
            + " Errors in days against the true ovulation.");
    sheet.table(
        List.of(
            "habit", "seasons", "median error", "90th", "bias", "50 % held", "90 % held", "width"),
        habits.stream()
            .map(
                row ->
                    List.of(
                        row.get("habit"),
                        row.get("seasons"),
                        days(row, "medianError"),
                        days(row, "p90Error"),
                        days(row, "bias"),
                        share(row, "held50"),
                        share(row, "held90"),
                        days(row, "width90")))
            .toList());
    sheet.plot("calibration.svg", calibration(), calibrationWords());
    sheet.plot("error-by-habit.svg", errors(), errorWords());
  }

  private String calibration() {
    DotPlot plot =
        new DotPlot(
                "How often an interval holds the truth",
                "per cent of seasons",
                30,
                100,
                10,
                List.of("50 % interval", "90 % interval"))
            .line(50)
            .line(90);
    habits.forEach(
        row ->
            plot.row(
                row.get("habit"),
                PER_CENT * number(row, "held50"),
                PER_CENT * number(row, "held90")));
    return plot.svg();
  }

  private String calibrationWords() {
    return String.format(
        Locale.ROOT,
        "Calibration by sampling habit: the 50 %% interval holds the truth in %.0f to %.0f %% of"
            + " seasons, the 90 %% interval in %.0f to %.0f %%.",
        PER_CENT * least("held50"),
        PER_CENT * most("held50"),
        PER_CENT * least("held90"),
        PER_CENT * most("held90"));
  }

  private String errors() {
    DotPlot plot =
        new DotPlot(
            "Error of the day of ovulation by sampling habit",
            "days; beyond 6 stands at the edge",
            0,
            6,
            1,
            List.of("engine, median", "engine, 90th", "past 5 ng/mL, 90th", "day 12, 90th"));
    habits.forEach(
        row ->
            plot.row(
                row.get("habit"),
                number(row, "medianError"),
                number(row, "p90Error"),
                number(row, "pastFiveP90"),
                number(row, "dayTwelveP90")));
    return plot.svg();
  }

  private String errorWords() {
    return String.format(
        Locale.ROOT,
        "Median errors of the engine lie between %.2f and %.2f days. Beside them two rules of"
            + " thumb: the first value past 5 ng/mL, and day 12 after first blood.",
        least("medianError"),
        most("medianError"));
  }

  private double least(String column) {
    return habits.stream().mapToDouble(row -> number(row, column)).min().orElse(Double.NaN);
  }

  private double most(String column) {
    return habits.stream().mapToDouble(row -> number(row, column)).max().orElse(Double.NaN);
  }

  private static double number(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static String days(CSVRecord row, String column) {
    return String.format(Locale.ROOT, "%.2f", number(row, column));
  }

  private static String share(CSVRecord row, String column) {
    return String.format(Locale.ROOT, "%.1f %%", PER_CENT * number(row, column));
  }
}
