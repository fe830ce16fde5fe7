package io.github.tiderule.api.report;

import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.Stage;
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
      h1, h2, h3 { line-height: 1.2; }
      h2 { border-bottom: 1px solid; margin-top: 3rem; }
      article { margin: 2rem 0; break-inside: avoid; }
      h3 code { font-weight: normal; margin-right: .5em; }
      dt { font-style: italic; }
      dd { margin: 0 0 .5rem 1.5rem; }
      code { font: .9em ui-monospace, monospace; overflow-wrap: anywhere; }
      table { border-collapse: collapse; width: 100%; font-size: .9rem; }
      th, td { text-align: left; vertical-align: top; border-bottom: 1px solid #8888;
        padding: .3rem .6rem .3rem 0; }
      td.number { text-align: right; white-space: nowrap; }
      tr { break-inside: avoid; }
      .wide { overflow-x: auto; }
      @media print { body { max-width: none; margin: 0; font-size: 10pt; }
        a { color: inherit; text-decoration: none; } }
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
        .append(rules.cards().size())
        .append(" rules, ")
        .append(rules.parameters().all().size())
        .append(" parameters, ")
        .append(rules.sources().all().size())
        .append(" sources. Stamp: ")
        .append(code(rules.fingerprint()))
        .append("</p>\n");
    for (Stage stage : Stage.values()) {
      List<RuleCard> cards = rules.cards().stream().filter(card -> card.stage() == stage).toList();
      if (!cards.isEmpty()) {
        html.append("<h2>Stage ").append(escaped(stage.word())).append("</h2>\n");
        cards.forEach(this::card);
      }
    }
    parameters();
    sources();
    return html.append("</body>\n</html>\n").toString();
  }

  private void card(RuleCard card) {
    html.append("<article id=\"")
        .append(anchor("rule", card.id()))
        .append("\">\n<h3>")
        .append(code(card.id()))
        .append(escaped(card.title()))
        .append("</h3>\n<dl>\n");
    entry("Looks at", escaped(card.looksAt()));
    entry("Concludes", escaped(card.concludes()));
    entry("Why", escaped(card.why()));
    entry("Sources", links("source", card.sources()));
    if (!card.parameters().isEmpty()) {
      entry("Parameters", links("parameter", card.parameters()));
    }
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
    html.append("<h2>Sources</h2>\n<dl>\n");
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
