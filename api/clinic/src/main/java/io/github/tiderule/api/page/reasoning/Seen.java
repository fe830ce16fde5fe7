package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.rules.condition.CheckSeen;
import io.github.tiderule.rules.condition.ConditionSeen;
import io.github.tiderule.rules.condition.Outcome;
import java.util.List;

/**
 * A condition of a rule and what it saw.
 *
 * @param outcome in words; empty where it goes without saying, since the rule spoke
 * @param checks its tests, each with the value it saw
 */
public record Seen(String outcome, String subject, List<String> checks) {

  /** What it is about, with its test where there is one only. */
  public String words() {
    return checks.size() == 1 ? subject + ": " + checks.get(0) : subject;
  }

  /** The conditions of a rule that spoke. */
  static List<Seen> spoke(List<ConditionSeen> conditions, Telling telling) {
    return conditions.stream().map(one -> of(one, "", false, telling)).toList();
  }

  /** The conditions of a rule that kept silent, with how each came out. */
  static List<Seen> silent(List<ConditionSeen> conditions, Telling telling) {
    return conditions.stream().map(one -> of(one, one.outcome().words(), true, telling)).toList();
  }

  private static Seen of(
      ConditionSeen seen, String outcome, boolean withOutcomes, Telling telling) {
    return new Seen(
        outcome,
        telling.say(seen.subject()),
        seen.checks().stream().map(check -> words(check, withOutcomes, telling)).toList());
  }

  private static String words(CheckSeen check, boolean withOutcome, Telling telling) {
    String saw = check.saw() == null ? "" : " [" + telling.sayWithin(check.saw()) + "]";
    String outcome =
        withOutcome && check.outcome() != Outcome.NOT_TRIED ? check.outcome().words() + ": " : "";
    return outcome.isEmpty()
        ? telling.say(check.words()) + saw
        : outcome + telling.sayWithin(check.words()) + saw;
  }
}
