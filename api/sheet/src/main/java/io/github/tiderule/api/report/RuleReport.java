package io.github.tiderule.api.report;

import io.github.tiderule.api.report.rulebook.ConditionLines;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.source.Sources;
import java.util.List;

/**
 * Why one rule spoke or kept silent over a cycle: each condition and the value it saw. Plain text
 * of at most 80 columns.
 */
public final class RuleReport {

  private static final Texts TEXTS = Texts.ofReports();

  private RuleReport() {}

  /** The report, each line ended by a line feed. */
  public static String text(
      CycleRecord cycle, Reasoning reasoning, RuleCard rule, Sources sources) {
    Telling telling = Telling.onTerminal(cycle);
    Page page = new Page(telling);
    page.line(rule.id() + " " + rule.title());
    page.line(rule.sentence());
    page.line(TEXTS.say("rule.why", rule.why()));
    List<TraceLine> spoken = reasoning.spoken(rule.id());
    for (TraceLine line : spoken) {
      page.heading(spoken.size() == 1 ? SectionKind.SPOKE : SectionKind.SPOKE_AT, line.seq());
      page.bullets(2, line.concluded());
      if (!line.matched().isEmpty()) {
        page.hanging(2, TEXTS.say("trace.from"), telling.observations(line.matched()));
      }
      page.gap();
      ConditionLines.full(page, reasoning.conditions(line));
    }
    if (spoken.isEmpty() && reasoning.ran(rule)) {
      page.heading(SectionKind.SILENT);
      page.indented(2, TEXTS.say("rule.nearest"));
      page.gap();
      ConditionLines.full(page, reasoning.conditions(rule));
    } else if (spoken.isEmpty()) {
      page.heading(SectionKind.NOT_ASKED);
      page.indented(2, TEXTS.say("rule.not-asked.stage", rule.chapter().word()));
    }
    page.heading(SectionKind.SOURCES);
    for (String key : rule.sources()) {
      page.hanging(
          2,
          key + ":",
          TEXTS.say("trace.read-as", sources.get(key).citation(), sources.get(key).readAs()));
    }
    return page.toString();
  }
}
