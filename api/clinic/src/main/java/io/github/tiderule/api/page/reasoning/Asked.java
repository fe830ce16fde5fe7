package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.rules.RuleCard;
import java.util.List;

/**
 * A rule that is asked for, and why it kept silent, if it did.
 *
 * @param outcome {@code spoke}, {@code silent}, {@code not-asked} or {@code unknown}
 * @param saw what its conditions saw, where it kept silent
 */
public record Asked(String rule, String title, String sentence, String outcome, List<Seen> saw) {

  static Asked of(String rule, Reasoning reasoning, Telling telling) {
    boolean spoke = !reasoning.spoken(rule).isEmpty();
    RuleCard card = reasoning.rule(rule).orElse(null);
    if (card == null) {
      return new Asked(rule, "", "", spoke ? "spoke" : "unknown", List.of());
    }
    String outcome = spoke ? "spoke" : reasoning.ran(card) ? "silent" : "not-asked";
    return new Asked(
        rule,
        card.title(),
        card.sentence(),
        outcome,
        outcome.equals("silent") ? Seen.silent(reasoning.conditions(card), telling) : List.of());
  }
}
