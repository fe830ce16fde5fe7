package io.github.tiderule.cases.report;

import io.github.tiderule.cases.published.Figure;
import io.github.tiderule.cases.published.FigureTable.Measured;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Which published figures the engine reproduces, misses, or cannot be held against. */
final class PublishedSection {

  private final List<Measured> figures;

  PublishedSection(List<Measured> figures) {
    this.figures = List.copyOf(figures);
  }

  void write(Sheet sheet) {
    Map<String, Long> counts =
        figures.stream().collect(Collectors.groupingBy(Measured::status, Collectors.counting()));
    sheet.heading(2, "Published figures");
    sheet.paragraph(
        counts.getOrDefault("reproduced", 0L)
            + " figures are reproduced within their span, "
            + counts.getOrDefault("missed", 0L)
            + " are missed and "
            + counts.getOrDefault("untested", 0L)
            + " cannot be tested. Read says how the source was read. Most spans come from the"
            + " source's own spread, and many sources went into the parameters themselves, so that"
            + " reproducing them shows consistency, not truth.");
    figures.stream()
        .map(one -> one.figure().section())
        .distinct()
        .forEach(section -> section(sheet, section));
  }

  private void section(Sheet sheet, String section) {
    sheet.heading(3, section.substring(0, 1).toUpperCase(Locale.ROOT) + section.substring(1));
    sheet.table(
        List.of("figure", "source", "read", "published", "span", "engine", "", "note"),
        figures.stream()
            .filter(one -> one.figure().section().equals(section))
            .map(PublishedSection::row)
            .toList());
  }

  private static List<String> row(Measured one) {
    Figure figure = one.figure();
    boolean tested = figure.testable();
    return List.of(
        figure.claim(),
        figure.source(),
        figure.read(),
        tested ? number(figure.published()) + " " + figure.unit() : "",
        tested ? number(figure.low()) + " to " + number(figure.high()) : "",
        tested ? number(one.number()) : "",
        one.status(),
        figure.note());
  }

  private static String number(double number) {
    String text = String.format(Locale.ROOT, Math.abs(number) < 10 ? "%.2f" : "%.1f", number);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }
}
