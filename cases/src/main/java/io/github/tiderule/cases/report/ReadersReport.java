package io.github.tiderule.cases.report;

import io.github.tiderule.cases.corpus.Answers;
import io.github.tiderule.cases.corpus.CaseFolder;
import io.github.tiderule.cases.corpus.CaseResult;
import io.github.tiderule.cases.corpus.Corpus;
import io.github.tiderule.cases.corpus.Judge;
import io.github.tiderule.cases.corpus.Outcome;
import io.github.tiderule.cases.published.FigureTable;
import io.github.tiderule.cases.published.Measures;
import io.github.tiderule.engine.Tiderule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Runs the corpus and the published checks and writes the report: {@code ReadersReport [CASES]}.
 */
public final class ReadersReport {

  private static final String TITLE = "How Tiderule stands";
  private static final double NANOS_PER_MILLI = 1e6;

  private final Path root;
  private final Tiderule engine = Tiderule.create();
  private final Map<CaseFolder, Outcome> outcomes = new LinkedHashMap<>();
  private final List<CaseResult> results = new ArrayList<>();
  private final List<Double> millis = new ArrayList<>();

  private ReadersReport(Path root) {
    this.root = root;
  }

  /**
   * Writes {@code report/index.html}, {@code report/index.md} and the plots.
   *
   * @param args the cases directory, by default {@code cases}
   * @throws IOException if a file cannot be written
   */
  public static void main(String[] args) throws IOException {
    ReadersReport report = new ReadersReport(Path.of(args.length > 0 ? args[0] : "cases"));
    report.run();
    report.write();
  }

  private void run() {
    Answers answers = Answers.of(engine);
    Judge judge = Judge.of(answers, root);
    for (CaseFolder folder : Corpus.under(root)) {
      long start = System.nanoTime();
      outcomes.put(folder, answers.to(folder));
      millis.add((System.nanoTime() - start) / NANOS_PER_MILLI);
      results.add(judge.judge(folder));
    }
  }

  private void write() throws IOException {
    Path directory = root.resolve("report");
    Sheet markdown = new MarkdownSheet(directory);
    Sheet html = new HtmlSheet(TITLE);
    var figures =
        FigureTable.measure(
            FigureTable.read(root.resolve("published").resolve("figures.csv")),
            Measures.of(engine));
    CohortTable cohorts = CohortTable.read(directory.resolve("cohort-timeline.csv"));
    for (Sheet sheet : List.of(markdown, html)) {
      sheet.heading(1, TITLE);
      sheet.paragraph(
          "Written by one command from the cases, the published figures and the cohort table beside"
              + " this file (see README.md). Rules and parameters in force: "
              + engine.rules().fingerprint()
              + ".");
      new CorpusSection(results).write(sheet);
      new PublishedSection(figures).write(sheet);
      cohorts.write(sheet);
      new CoverageSection(engine.rules().cards(), outcomes).write(sheet);
      timing(sheet);
    }
    Files.writeString(directory.resolve("index.md"), markdown.text());
    Files.writeString(directory.resolve("index.html"), html.text());
  }

  private void timing(Sheet sheet) {
    double[] sorted = millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    sheet.heading(2, "Timing");
    sheet.paragraph(
        String.format(
            Locale.ROOT,
            "One answer, from bytes to report, in the run that wrote this page: %.0f ms in the"
                + " middle, %.0f ms in nine of ten, %.0f ms at most (the first one warms up);"
                + " all %d in %.1f s. Another machine gives other numbers.",
            sorted[sorted.length / 2],
            sorted[sorted.length * 9 / 10],
            sorted[sorted.length - 1],
            sorted.length,
            Arrays.stream(sorted).sum() / 1000));
  }
}
