package io.github.tiderule.engine.change;

import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A rule that speaks in only one of two answers.
 *
 * @param speaks whether it speaks in the later answer
 * @param concluded what it says there, or said in the earlier answer
 * @param matched ids of the observations that rests on
 */
public record RuleChange(
    String rule,
    TraceStage stage,
    String title,
    boolean speaks,
    List<Sentence> concluded,
    List<String> matched,
    List<String> sources) {

  public RuleChange {
    concluded = List.copyOf(concluded);
    matched = List.copyOf(matched);
    sources = List.copyOf(sources);
  }
}
