package io.github.tiderule.api.report;

import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.source.Source;
import java.util.List;

/** The rules, parameters and sources as Markdown. */
public final class RulebookMarkdown {

  private RulebookMarkdown() {}

  /** The text, each line ended by a line feed. */
  public static String text(RuleBase rules) {
    StringBuilder text = new StringBuilder();
    text.append("# Rule book\n\n")
        .append(rules.cards().size())
        .append(" rules, ")
        .append(rules.parameters().all().size())
        .append(" parameters, ")
        .append(rules.sources().all().size())
        .append(" sources; ")
        .append('`')
        .append(rules.fingerprint())
        .append("`\n");
    for (Stage stage : Stage.values()) {
      List<RuleCard> cards = rules.cards().stream().filter(card -> card.stage() == stage).toList();
      if (!cards.isEmpty()) {
        text.append("\n## Stage ").append(stage.word()).append('\n');
        cards.forEach(card -> card(text, card));
      }
    }
    text.append("\n## Parameters\n\n")
        .append("| id | value | unit | from–to | source | read | since | meaning |\n")
        .append("|---|---|---|---|---|---|---|---|\n");
    rules.parameters().all().forEach(parameter -> parameter(text, parameter));
    text.append("\n## Sources\n\n| key | work | read as |\n|---|---|---|\n");
    for (Source source : rules.sources().all()) {
      row(text, "`" + source.key() + "`", plain(source.citation()), plain(source.readAs()));
    }
    return text.toString();
  }

  private static void card(StringBuilder text, RuleCard card) {
    text.append("\n### ").append(card.id()).append(" · ").append(plain(card.title()));
    text.append("\n\n");
    text.append("- Looks at: ").append(plain(card.looksAt())).append('\n');
    text.append("- Concludes: ").append(plain(card.concludes())).append('\n');
    text.append("- Why: ").append(plain(card.why())).append('\n');
    text.append("- Sources: ").append(codes(card.sources())).append('\n');
    if (!card.parameters().isEmpty()) {
      text.append("- Parameters: ").append(codes(card.parameters())).append('\n');
    }
  }

  private static void parameter(StringBuilder text, Parameter parameter) {
    row(
        text,
        "`" + parameter.id() + "`",
        PlainNumber.of(parameter.value()),
        plain(parameter.unit()),
        PlainNumber.of(parameter.min()) + "–" + PlainNumber.of(parameter.max()),
        "`" + parameter.source() + "`",
        plain(parameter.read()),
        parameter.since().toString(),
        plain(parameter.meaning()));
  }

  private static void row(StringBuilder text, String... cells) {
    text.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }

  private static String codes(List<String> keys) {
    return keys.isEmpty() ? "none" : "`" + String.join("`, `", keys) + "`";
  }

  /** Takes from a text what Markdown would read as markup. */
  private static String plain(String words) {
    return words.replaceAll("\\s+", " ").replaceAll("([\\\\`*_\\[\\]<>|#])", "\\\\$1");
  }
}
