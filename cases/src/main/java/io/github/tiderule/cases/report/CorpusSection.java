package io.github.tiderule.cases.report;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.tiderule.cases.corpus.CaseFolder;
import io.github.tiderule.cases.corpus.CaseResult;
import io.github.tiderule.cases.corpus.Difference;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** How the corpus stands. */
final class CorpusSection {

  private final List<CaseResult> results;

  CorpusSection(List<CaseResult> results) {
    this.results = List.copyOf(results);
  }

  void write(Sheet sheet) {
    List<CaseResult> held = results.stream().filter(one -> !one.folder().open()).toList();
    long holding = held.stream().filter(CaseResult::holds).count();
    sheet.heading(2, "The case corpus");
    sheet.paragraph(
        holding
            + " of "
            + held.size()
            + " cases hold, in "
            + held.stream().mapToInt(CaseResult::checks).sum()
            + " checks. Another "
            + (results.size() - held.size())
            + " are open: well reasoned, and not answered so yet.");
    sheet.table(List.of("topic", "cases", "hold", "checks"), topics());
    sheet.table(
        List.of("provenance", "cases"),
        counted(
            results.stream()
                .collect(
                    Collectors.groupingBy(
                        CaseResult::provenance, TreeMap::new, Collectors.counting()))));
    failing(sheet, held);
    open(sheet);
    disputed(sheet);
  }

  private List<List<String>> topics() {
    Map<String, List<CaseResult>> byTopic =
        results.stream()
            .collect(
                Collectors.groupingBy(
                    one -> one.folder().topic(), TreeMap::new, Collectors.toList()));
    return byTopic.entrySet().stream()
        .map(
            entry ->
                List.of(
                    entry.getKey(),
                    Integer.toString(entry.getValue().size()),
                    Long.toString(entry.getValue().stream().filter(CaseResult::holds).count()),
                    Integer.toString(entry.getValue().stream().mapToInt(CaseResult::checks).sum())))
        .toList();
  }

  private static List<List<String>> counted(Map<String, Long> counts) {
    return counts.entrySet().stream()
        .map(entry -> List.of(entry.getKey(), Long.toString(entry.getValue())))
        .toList();
  }

  private static void failing(Sheet sheet, List<CaseResult> held) {
    List<CaseResult> failing = held.stream().filter(one -> !one.holds()).toList();
    if (!failing.isEmpty()) {
      sheet.heading(3, "Cases that do not hold");
      sheet.table(
          List.of("case", "what differs"),
          failing.stream().map(one -> List.of(one.folder().name(), differences(one))).toList());
    }
  }

  private void open(Sheet sheet) {
    sheet.heading(3, "Open cases");
    sheet.table(
        List.of("case", "expected", "what the engine says instead"),
        results.stream()
            .filter(one -> one.folder().open())
            .map(one -> List.of(one.title(), one.why().strip(), written(one.folder(), "says")))
            .toList());
  }

  private void disputed(Sheet sheet) {
    sheet.heading(3, "Disputed cases");
    sheet.table(
        List.of("case", "dispute", "held to be right"),
        results.stream()
            .filter(one -> one.folder().topic().equals(CaseFolder.DISPUTED))
            .map(one -> List.of(one.title(), written(one.folder(), "dispute"), one.why().strip()))
            .toList());
  }

  private static String written(CaseFolder folder, String key) {
    JsonNode expectation = folder.expectation();
    return expectation.path(key).asText().strip();
  }

  private static String differences(CaseResult result) {
    return result.differences().stream()
        .map(Difference::toString)
        .map(String::strip)
        .collect(Collectors.joining("; "));
  }
}
