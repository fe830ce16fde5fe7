package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.reasoning.Disagreement;
import io.github.tiderule.rules.source.Sources;
import java.util.List;

/** A topic on which schools disagree, what each holds, and which way the plan leans and why. */
public record Dispute(String about, List<Held> positions, String leansTo, String why) {

  /** What one school holds. */
  public record Held(String rule, String text, List<Cited> sources) {}

  /** Those a filter keeps: of a rule, those in which it holds a position. */
  static List<Dispute> all(Advice advice, Sources sources, Filter filter, Telling telling) {
    if (!filter.observation().isEmpty() || !filter.day().isEmpty()) {
      return List.of();
    }
    return advice.reasoning().disagreements().stream()
        .filter(
            dispute -> dispute.positions().stream().anyMatch(one -> filter.keepsRule(one.rule())))
        .map(dispute -> of(dispute, sources, telling))
        .toList();
  }

  private static Dispute of(Disagreement dispute, Sources sources, Telling telling) {
    return new Dispute(
        dispute.about(),
        dispute.positions().stream()
            .map(
                one ->
                    new Held(
                        one.rule(), telling.say(one.text()), Cited.all(one.sources(), sources)))
            .toList(),
        telling.say(dispute.leansTo()),
        telling.say(dispute.why()));
  }
}
