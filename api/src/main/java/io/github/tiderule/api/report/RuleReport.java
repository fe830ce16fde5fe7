package io.github.tiderule.api.report;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.TraceLine;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.source.Sources;
import java.util.List;

/**
 * Why one rule spoke or kept silent over a cycle: each condition and the value it saw. Plain text
 * of at most 80 columns.
 */
public final class RuleReport {

  private RuleReport() {}

  /** The report, each line ended by a line feed. */
  public static String text(
      CycleRecord cycle, Reasoning reasoning, RuleCard rule, Sources sources) {
    Page page = new Page();
    page.line(rule.id() + " " + rule.title());
    page.line(rule.sentence());
    page.line("Why the trade holds this: " + rule.why());
    List<TraceLine> spoken = reasoning.spoken(rule.id());
    ObservationWords names = new ObservationWords(cycle);
    for (TraceLine line : spoken) {
      page.heading(
          "It spoke" + (spoken.size() == 1 ? "" : ", step " + line.seq() + " of the trace"));
      page.bullets(2, line.concluded());
      if (!line.matched().isEmpty()) {
        page.hanging(2, "from:", names.of(line.matched()));
      }
      page.gap();
      ConditionLines.full(page, reasoning.conditions(line));
    }
    if (spoken.isEmpty() && reasoning.ran(rule)) {
      page.heading("It kept silent");
      page.indented(2, "What came nearest to meeting it:");
      page.gap();
      ConditionLines.full(page, reasoning.conditions(rule));
    } else if (spoken.isEmpty()) {
      page.heading("It was not asked");
      page.indented(
          2, "Rules of the stage " + rule.stage().word() + " were not run for this cycle.");
    }
    page.heading("Sources, and how each was read");
    for (String key : rule.sources()) {
      page.hanging(
          2,
          key + ":",
          sources.get(key).citation() + " Read as: " + sources.get(key).readAs() + ".");
    }
    return page.toString();
  }
}
