package io.github.tiderule.format.json;

import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.source.Source;
import java.util.List;

/** The rules, parameters and sources as a JSON document, schema {@code tiderule/rulebook/1}. */
public final class RulebookJson {

  /** The name and version of the document. */
  public static final String SCHEMA = "tiderule/rulebook/1";

  private RulebookJson() {}

  /** The document, indented, with a line feed at its end. */
  public static String text(RuleBase rules) {
    return Document.text(
        Layout.INDENTED,
        json ->
            json.text("schema", SCHEMA)
                .text("rules", rules.fingerprint())
                .objects(
                    "concerns",
                    rules.concerns(),
                    concern ->
                        json.text("file", concern.file())
                            .text("stage", concern.chapter().word())
                            .text("title", concern.title())
                            .texts("cards", concern.cards().stream().map(RuleCard::id).toList()))
                .objects(
                    "cards",
                    rules.cards(),
                    card ->
                        json.text("id", card.id())
                            .text("stage", card.chapter().word())
                            .text("title", card.title())
                            .text("sentence", card.sentence())
                            .text("looksAt", card.looksAt())
                            .text("concludes", card.concludes())
                            .text("why", card.why())
                            .texts("sources", card.sources())
                            .texts("parameters", card.parameters()))
                .objects(
                    "parameters",
                    List.copyOf(rules.parameters().all()),
                    parameter -> parameter(json, parameter))
                .objects(
                    "sources", List.copyOf(rules.sources().all()), source -> source(json, source)));
  }

  private static void parameter(Document json, Parameter parameter) {
    json.text("id", parameter.id())
        .exact("value", parameter.value())
        .text("unit", parameter.unit())
        .exact("min", parameter.min())
        .exact("max", parameter.max())
        .text("source", parameter.source())
        .text("read", parameter.read())
        .day("since", parameter.since())
        .text("meaning", parameter.meaning());
  }

  private static void source(Document json, Source source) {
    json.text("key", source.key())
        .text("citation", source.citation())
        .text("readAs", source.readAs());
  }
}
