package io.github.tiderule.api.report.rulebook;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.rules.Chapter;
import io.github.tiderule.rules.Concern;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.source.Source;

/** The rule book as plain text of at most 80 columns. */
public final class RulebookText {

  private RulebookText() {}

  /** The text, each line ended by a line feed. */
  public static String text(RuleBase rules) {
    Page page = new Page(Telling.onTerminal());
    page.line("Rule book");
    page.line(RulebookWords.summary(rules));
    page.line(rules.fingerprint());
    RulebookWords.localNotes(rules).forEach(note -> page.hanging(0, "-", note));
    for (Chapter chapter : Chapter.values()) {
      page.heading(SectionKind.STAGE, chapter.word());
      rules.concerns().stream()
          .filter(concern -> concern.chapter() == chapter)
          .forEach(concern -> concern(page, rules, concern));
    }
    page.heading(SectionKind.SOURCES);
    for (Source source : rules.sources().all()) {
      page.hanging(2, source.key() + ":", source.citation() + " Read as: " + source.readAs() + ".");
    }
    return page.toString();
  }

  private static void concern(Page page, RuleBase rules, Concern concern) {
    page.gap();
    page.line(concern.title());
    for (RuleCard card : concern.cards()) {
      page.gap();
      page.hanging(2, card.id(), card.title());
      page.indented(4, card.sentence());
      page.indented(4, card.why());
      for (Parameter parameter : RulebookWords.parameters(rules, card)) {
        page.hanging(4, "-", parameter.id() + ": " + RulebookWords.value(parameter));
      }
      page.hanging(4, "by:", String.join(", ", card.sources()));
    }
  }
}
