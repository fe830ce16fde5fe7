package io.github.tiderule.rules.condition;

import java.util.List;

/**
 * One condition of a rule with what it saw.
 *
 * @param subject what it is about, in plain words: the fact it saw, or the kind of fact it asks for
 */
public record ConditionSeen(Outcome outcome, String subject, List<CheckSeen> checks) {

  public ConditionSeen {
    checks = List.copyOf(checks);
  }
}
