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

/** The rule book as Markdown: by concern, each rule with its parameters and sources. */
public final class RulebookMarkdown {

  private final StringBuilder text = new StringBuilder();
  private final RuleBase rules;

  private RulebookMarkdown(RuleBase rules) {
    this.rules = rules;
  }

  /** The text, each line ended by a line feed. */
  public static String text(RuleBase rules) {
    return new RulebookMarkdown(rules).text();
  }

  private String text() {
    text.append("# Rule book\n\n")
        .append(RulebookWords.summary(rules))
        .append(" Stamp: `")
        .append(rules.fingerprint())
        .append("`\n");
    RulebookWords.localNotes(rules).forEach(note -> text.append("\n- ").append(plain(note)));
    if (rules.overlay().isPresent()) {
      text.append('\n');
    }
    for (Chapter chapter : Chapter.values()) {
      text.append("\n## Stage ").append(chapter.word()).append('\n');
      rules.concerns().stream().filter(one -> one.chapter() == chapter).forEach(this::concern);
    }
    text.append("\n## Parameters\n\n")
        .append("| id | value | unit | from–to | source | read | since | meaning |\n")
        .append("|---|---|---|---|---|---|---|---|\n");
    rules.parameters().all().forEach(this::parameter);
    text.append("\n## Sources\n\n| key | work | read as |\n|---|---|---|\n");
    for (Source source : rules.sources().all()) {
      row("`" + source.key() + "`", plain(source.citation()), plain(source.readAs()));
    }
    return text.toString();
  }

  private void concern(Concern concern) {
    text.append("\n### ").append(plain(concern.title())).append('\n');
    concern.cards().forEach(this::card);
  }

  private void card(RuleCard card) {
    text.append("\n#### ").append(card.id()).append(" · ").append(plain(card.title()));
    text.append("\n\n").append(plain(card.sentence()));
    text.append(" *").append(plain(card.why())).append("*\n\n");
    for (Parameter parameter : RulebookWords.parameters(rules, card)) {
      text.append("- `")
          .append(parameter.id())
          .append("`: ")
          .append(plain(RulebookWords.value(parameter)))
          .append('\n');
    }
    text.append("- Sources: ").append(sources(card.sources())).append('\n');
  }

  private String sources(List<String> keys) {
    return keys.stream()
        .map(key -> "`" + key + "` (" + plain(rules.sources().get(key).readAs()) + ")")
        .collect(Collectors.joining(", "));
  }

  private void parameter(Parameter parameter) {
    row(
        "`" + parameter.id() + "`",
        PlainNumber.of(parameter.value()),
        plain(parameter.unit()),
        PlainNumber.of(parameter.min()) + "–" + PlainNumber.of(parameter.max()),
        "`" + parameter.source() + "`",
        plain(parameter.read()),
        parameter.since().toString(),
        plain(parameter.meaning()));
  }

  private void row(String... cells) {
    text.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }

  /** Takes from a text what Markdown would read as markup. */
  private static String plain(String words) {
    return words.replaceAll("\\s+", " ").replaceAll("([\\\\`*_\\[\\]<>|#])", "\\\\$1");
  }
}
