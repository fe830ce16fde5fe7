package io.github.tiderule.cases.report;

import io.github.tiderule.cases.corpus.CaseFolder;
import io.github.tiderule.cases.corpus.Outcome;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.rules.RuleCard;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Which rules the corpus makes fire, and which no case ever does. */
final class CoverageSection {

  private final List<RuleCard> cards;
  private final Map<String, Integer> casesByRule = new HashMap<>();

  CoverageSection(List<RuleCard> cards, Map<CaseFolder, Outcome> outcomes) {
    this.cards = List.copyOf(cards);
    outcomes.values().forEach(this::count);
  }

  private void count(Outcome outcome) {
    if (outcome instanceof Outcome.Advised advised) {
      Set<String> fired = new HashSet<>();
      advised.advice().reasoning().trace().stream().map(TraceLine::rule).forEach(fired::add);
      fired.forEach(rule -> casesByRule.merge(rule, 1, Integer::sum));
    }
  }

  void write(Sheet sheet) {
    List<RuleCard> never =
        cards.stream().filter(card -> !casesByRule.containsKey(card.id())).toList();
    List<RuleCard> once =
        cards.stream().filter(card -> casesByRule.getOrDefault(card.id(), 0) == 1).toList();
    sheet.heading(2, "Rule coverage");
    sheet.paragraph(
        (cards.size() - never.size())
            + " of "
            + cards.size()
            + " rules fire in the corpus; "
            + once.size()
            + " in one case only. Every rule also has a firing and a silent case of its own beside"
            + " the rules; a rule listed here is one that no whole season reaches.");
    if (!never.isEmpty()) {
      sheet.table(
          List.of("rule", "stage", "title"),
          never.stream()
              .map(card -> List.of(card.id(), card.chapter().name(), card.title()))
              .toList());
    }
  }
}
