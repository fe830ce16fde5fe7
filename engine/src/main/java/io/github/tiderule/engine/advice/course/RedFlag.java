package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.conclusion.care.RedFlagKind;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A sign that calls a vet, for a card to keep at hand.
 *
 * @param kind {@code pregnancy}, {@code whelping} or {@code after-whelping}
 * @param rule the rule that names it
 */
public record RedFlag(RedFlagKind kind, Sentence text, String rule, List<String> sources) {

  public RedFlag {
    sources = List.copyOf(sources);
  }
}
