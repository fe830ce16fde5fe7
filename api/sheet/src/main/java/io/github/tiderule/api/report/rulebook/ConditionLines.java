package io.github.tiderule.api.report.rulebook;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.rules.condition.CheckSeen;
import io.github.tiderule.rules.condition.ConditionSeen;
import io.github.tiderule.rules.condition.Outcome;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Conditions of a rule and what they saw, as lines of a page. */
public final class ConditionLines {

  private static final Texts TEXTS = Texts.ofReports();

  private ConditionLines() {}

  /** A line for each condition, and one for all parameters. */
  public static void brief(Page page, List<ConditionSeen> conditions) {
    Telling telling = page.telling();
    String parameters =
        conditions.stream()
            .map(ConditionSeen::parameter)
            .flatMap(Stream::ofNullable)
            .map(telling::sayWithin)
            .collect(Collectors.joining(", "));
    if (!parameters.isEmpty()) {
      page.hanging(6, TEXTS.say("trace.with"), parameters);
    }
    for (ConditionSeen seen : conditions) {
      if (seen.parameter() != null) {
        continue;
      }
      String checks =
          seen.checks().stream()
              .map(check -> words(check, telling))
              .collect(Collectors.joining("; "));
      page.hanging(
          6,
          TEXTS.say("trace.saw"),
          telling.sayWithin(seen.subject()) + (checks.isEmpty() ? "" : ": " + checks));
    }
  }

  /** Each condition with its outcome, and each test in it as written and in words. */
  public static void full(Page page, List<ConditionSeen> conditions) {
    int number = 0;
    for (ConditionSeen seen : conditions) {
      number++;
      page.hanging(
          2,
          number + ".",
          seen.outcome().words() + ": " + page.telling().sayWithin(seen.subject()));
      for (CheckSeen check : seen.checks()) {
        String outcome = check.outcome() == Outcome.NOT_TRIED ? "" : check.outcome().words() + ": ";
        page.hanging(5, "-", outcome + words(check, page.telling()));
        if (!check.isAsWritten()) {
          page.hanging(7, TEXTS.say("rule.written"), check.written());
        }
      }
    }
  }

  private static String words(CheckSeen check, Telling telling) {
    String asks = telling.sayWithin(check.words());
    return check.saw() == null ? asks : asks + " [" + telling.sayWithin(check.saw()) + "]";
  }
}
