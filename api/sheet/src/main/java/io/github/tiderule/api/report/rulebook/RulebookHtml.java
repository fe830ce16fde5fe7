package io.github.tiderule.api.report.rulebook;

import io.github.tiderule.api.report.text.PlainNumber;
import io.github.tiderule.rules.Chapter;
import io.github.tiderule.rules.Concern;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.source.Source;
import java.util.List;
import java.util.stream.Collectors;

/** The rules, parameters and sources as one page that needs no other file. */
public final class RulebookHtml {

  private static final String STYLE =
      """
      :root { color-scheme: light dark; }
      body { font: 1rem/1.5 Georgia, 'Times New Roman', serif; max-width: 46rem;
        margin: 2rem auto; padding: 0 1rem; }
      h1, h2, h3, h4 { line-height: 1.2; break-after: avoid; }
      h2 { border-bottom: 1px solid; margin-top: 3rem; }
      h3 { margin-top: 2.5rem; }
      h4 { font-size: 1rem; margin-bottom: .3rem; }
      h4 code { font-weight: normal; margin-right: .6em; }
      nav ul { columns: 2 18rem; column-gap: 2rem; padding-left: 1.2rem; font-size: .9rem; }
      article { margin: 1.5rem 0; break-inside: avoid; }
      article p { margin: .3rem 0; }
      dl { margin: .3rem 0; font-size: .9rem; }
      dt { float: left; clear: left; margin-right: .6em; }
      dd { margin: 0 0 .2rem 1.5rem; }
      .sources dt { float: none; margin-top: .5rem; }
      .local { border-left: 3px solid; padding-left: .6rem; }
      code { font: .9em ui-monospace, monospace; overflow-wrap: anywhere; }
      table { border-collapse: collapse; width: 100%; font-size: .9rem; }
      th, td { text-align: left; vertical-align: top; border-bottom: 1px solid #8888;
        padding: .3rem .6rem .3rem 0; }
      td.number { text-align: right; white-space: nowrap; }
      tr { break-inside: avoid; }
      .wide { overflow-x: auto; }
      @page { margin: 18mm; }
      @media print { body { max-width: none; margin: 0; padding: 0; font-size: 10pt; }
        a { color: inherit; text-decoration: none; } nav { break-after: page; } }
      """;

  private final StringBuilder html = new StringBuilder();
  private final RuleBase rules;

  private RulebookHtml(RuleBase rules) {
    this.rules = rules;
  }

  /** The page. */
  public static String text(RuleBase rules) {
    return new RulebookHtml(rules).text();
  }

  private String text() {
    html.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<title>Tiderule: rule book</title>\n<style>\n")
        .append(STYLE)
        .append("</style>\n</head>\n<body>\n<h1>Rule book</h1>\n<p>")
        .append(escaped(RulebookWords.summary(rules)))
        .append(" Stamp: ")
        .append(code(rules.fingerprint()))
        .append("</p>\n");
    RulebookWords.localNotes(rules)
        .forEach(note -> html.append("<p class=\"local\">").append(escaped(note)).append("</p>\n"));
    contents();
    for (Chapter chapter : Chapter.values()) {
      html.append("<h2>Stage ").append(escaped(chapter.word())).append("</h2>\n");
      rules.concerns().stream().filter(one -> one.chapter() == chapter).forEach(this::concern);
    }
    parameters();
    sources();
    return html.append("</body>\n</html>\n").toString();
  }

  private void contents() {
    html.append("<nav>\n<ul>\n");
    for (Concern concern : rules.concerns()) {
      html.append("<li><a href=\"#")
          .append(anchor("concern", concern.file()))
          .append("\">")
          .append(escaped(concern.title()))
          .append("</a></li>\n");
    }
    html.append("</ul>\n</nav>\n");
  }

  private void concern(Concern concern) {
    html.append("<h3 id=\"")
        .append(anchor("concern", concern.file()))
        .append("\">")
        .append(escaped(concern.title()))
        .append("</h3>\n");
    concern.cards().forEach(this::card);
  }

  private void card(RuleCard card) {
    html.append("<article id=\"")
        .append(anchor("rule", card.id()))
        .append("\">\n<h4>")
        .append(code(card.id()))
        .append(escaped(card.title()))
        .append("</h4>\n<p>")
        .append(escaped(card.sentence()))
        .append(" <em>")
        .append(escaped(card.why()))
        .append("</em></p>\n<dl>\n");
    for (Parameter parameter : RulebookWords.parameters(rules, card)) {
      entry(
          links("parameter", List.of(parameter.id())),
          "<b>"
              + escaped(PlainNumber.of(parameter.value()) + " " + parameter.unit())
              + "</b>, "
              + escaped(parameter.read())
              + " ("
              + links("source", List.of(parameter.source()))
              + ")");
    }
    entry(
        "Sources",
        card.sources().stream()
            .map(
                key ->
                    links("source", List.of(key))
                        + " ("
                        + escaped(rules.sources().get(key).readAs())
                        + ")")
            .collect(Collectors.joining(", ")));
    html.append("</dl>\n</article>\n");
  }

  private void entry(String term, String markup) {
    html.append("<dt>").append(term).append("</dt><dd>").append(markup).append("</dd>\n");
  }

  private void parameters() {
    html.append("<h2>Parameters</h2>\n<div class=\"wide\">\n<table>\n<thead><tr><th>id")
        .append("</th><th>value</th><th>unit</th><th>source, how read, since</th>")
        .append("<th>meaning</th></tr></thead>\n<tbody>\n");
    for (Parameter parameter : rules.parameters().all()) {
      html.append("<tr id=\"")
          .append(anchor("parameter", parameter.id()))
          .append("\"><td>")
          .append(code(parameter.id()))
          .append("</td><td class=\"number\">")
          .append(PlainNumber.of(parameter.value()))
          .append("</td><td>")
          .append(escaped(parameter.unit()))
          .append("</td><td>")
          .append(links("source", List.of(parameter.source())))
          .append(", ")
          .append(escaped(parameter.read()))
          .append(", ")
          .append(parameter.since())
          .append("</td><td>")
          .append(escaped(parameter.meaning()))
          .append("</td></tr>\n");
    }
    html.append("</tbody>\n</table>\n</div>\n");
  }

  private void sources() {
    html.append("<h2>Sources</h2>\n<dl class=\"sources\">\n");
    for (Source source : rules.sources().all()) {
      html.append("<dt id=\"")
          .append(anchor("source", source.key()))
          .append("\">")
          .append(code(source.key()))
          .append("</dt><dd>")
          .append(escaped(source.citation()))
          .append(" Read as: ")
          .append(escaped(source.readAs()))
          .append(".</dd>\n");
    }
    html.append("</dl>\n");
  }

  private static String links(String kind, List<String> keys) {
    return keys.stream()
        .map(key -> "<a href=\"#" + anchor(kind, key) + "\">" + code(key) + "</a>")
        .collect(Collectors.joining(", "));
  }

  private static String anchor(String kind, String key) {
    return kind + "-" + key.replaceAll("[^A-Za-z0-9.-]", "-");
  }

  private static String code(String text) {
    return "<code>" + escaped(text) + "</code>";
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }
}
