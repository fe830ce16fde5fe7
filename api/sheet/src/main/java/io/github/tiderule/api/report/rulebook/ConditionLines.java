package io.github.tiderule.api.report.rulebook;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.rules.condition.CheckSeen;
import io.github.tiderule.rules.condition.ConditionSeen;
import io.github.tiderule.rules.condition.Outcome;
import java.util.List;
import java.util.stream.Collectors;

/** Conditions of a rule and what they saw, as lines of a page. */
public final class ConditionLines {

  private static final Texts TEXTS = Texts.ofReports();

  private static final String PARAMETER = "the parameter ";

  private ConditionLines() {}

  /** A line for each condition, and one for all parameters. */
  public static void brief(Page page, List<ConditionSeen> conditions) {
    String parameters =
        conditions.stream()
            .map(ConditionSeen::subject)
            .filter(subject -> subject.startsWith(PARAMETER))
            .map(subject -> subject.substring(PARAMETER.length()))
            .collect(Collectors.joining(", "));
    if (!parameters.isEmpty()) {
      page.hanging(6, TEXTS.say("trace.with"), parameters);
    }
    for (ConditionSeen seen : conditions) {
      if (seen.subject().startsWith(PARAMETER)) {
        continue;
      }
      String checks =
          seen.checks().stream().map(ConditionLines::words).collect(Collectors.joining("; "));
      page.hanging(
          6, TEXTS.say("trace.saw"), seen.subject() + (checks.isEmpty() ? "" : ": " + checks));
    }
  }

  /** Each condition with its outcome, and each test in it as written and in words. */
  public static void full(Page page, List<ConditionSeen> conditions) {
    int number = 0;
    for (ConditionSeen seen : conditions) {
      number++;
      page.hanging(2, number + ".", seen.outcome().words() + ": " + seen.subject());
      for (CheckSeen check : seen.checks()) {
        String outcome = check.outcome() == Outcome.NOT_TRIED ? "" : check.outcome().words() + ": ";
        page.hanging(5, "-", outcome + words(check));
        if (!check.written().equals(check.words())) {
          page.hanging(7, TEXTS.say("rule.written"), check.written());
        }
      }
    }
  }

  private static String words(CheckSeen check) {
    return check.words() + (check.saw().isEmpty() ? "" : " [" + check.saw() + "]");
  }
}
