package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One condition of a rule with what it saw.
 *
 * @param subject what it is about, in plain words: the fact it saw, or the kind of fact it asks for
 * @param parameter the parameter it is about, with its value; absent where it is about none
 */
public record ConditionSeen(
    Outcome outcome, Sentence subject, List<CheckSeen> checks, @Nullable Sentence parameter) {

  public ConditionSeen {
    checks = List.copyOf(checks);
  }
}
