package io.github.tiderule.api.report;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.DayProbability;
import io.github.tiderule.engine.advice.Influence;
import io.github.tiderule.engine.advice.LocalProtocol;
import io.github.tiderule.engine.advice.NotFired;
import io.github.tiderule.engine.advice.Ovulation;
import io.github.tiderule.engine.advice.Quantiles;
import io.github.tiderule.engine.advice.TraceLine;
import io.github.tiderule.rules.source.Source;
import io.github.tiderule.rules.source.Sources;
import java.util.List;
import java.util.Locale;

/**
 * The reasoning for a vet: every firing by stage with its observations, its sources and what its
 * conditions saw, what did not fire and why, and the numbers of the timeline. Plain text of at most
 * 80 columns.
 */
public final class TraceReport {

  public static final String SCHOOLS = "Where schools disagree";
  public static final String SOURCES = "Sources, and how each was read";

  private final CycleRecord cycle;
  private final Reasoning reasoning;
  private final Advice advice;
  private final Sources sources;
  private final Page page = new Page();

  private TraceReport(CycleRecord cycle, Reasoning reasoning, Sources sources) {
    this.cycle = cycle;
    this.reasoning = reasoning;
    this.advice = reasoning.advice();
    this.sources = sources;
  }

  /** The report on a cycle, each line ended by a line feed. */
  public static String text(CycleRecord cycle, Reasoning reasoning, Sources sources) {
    return new TraceReport(cycle, reasoning, sources).written().toString();
  }

  /** The same in sections, to be set on paper; the first has the title, the last the stamp. */
  public static List<Section> sections(CycleRecord cycle, Reasoning reasoning, Sources sources) {
    return new TraceReport(cycle, reasoning, sources).written().sections();
  }

  private Page written() {
    String name = cycle.female().name();
    String id = advice.femaleId();
    String who = name != null ? name : id != null ? id : "an unnamed female";
    page.line("Reasoning for " + who);
    page.line("as of " + LocalWords.moment(advice.asOf()) + "; all times are for " + cycle.zone());
    page.line("Outcome: " + advice.action().headline());
    if (!advice.action().because().isEmpty()) {
      page.line("by " + String.join(", ", advice.action().because()));
    }
    localProtocol();
    firings();
    notFired();
    Doubts.writeDisagreementsWithSources(page, advice);
    influences();
    timeline();
    cited();
    page.gap();
    page.line("Engine " + advice.stamp().engine() + ", rules");
    page.line(advice.stamp().rules());
    page.line("Not a substitute for a vet; check your own local rules.");
    return page;
  }

  private void localProtocol() {
    LocalProtocol overlay = advice.stamp().overlay();
    if (overlay == null) {
      return;
    }
    page.heading("Local protocol " + overlay.name());
    for (LocalProtocol.Change change : overlay.changes()) {
      page.hanging(
          2,
          "-",
          change.parameter()
              + " is "
              + PlainNumber.of(change.local())
              + " instead of "
              + PlainNumber.of(change.usual())
              + " "
              + change.unit()
              + " since "
              + change.since()
              + ": "
              + change.reason()
              + " ("
              + change.by()
              + ")");
    }
    page.indented(2, overlay.hash());
  }

  private void firings() {
    ObservationWords names = new ObservationWords(cycle);
    String stage = "";
    for (TraceLine line : advice.trace()) {
      if (!line.stage().equals(stage)) {
        stage = line.stage();
        page.heading("Stage " + stage);
      }
      page.hanging(2, line.seq() + ".", line.rule() + " " + line.title());
      page.bullets(6, line.concluded());
      if (!line.matched().isEmpty()) {
        page.hanging(6, "from:", names.of(line.matched()));
      }
      if (!line.sources().isEmpty()) {
        page.hanging(6, "by:", String.join(", ", line.sources()));
      }
      ConditionLines.brief(page, reasoning.conditions(line));
    }
  }

  private void notFired() {
    page.heading("What did not fire");
    if (advice.notFired().isEmpty()) {
      page.indented(2, "No rule was one condition short of speaking.");
    }
    for (NotFired rule : advice.notFired()) {
      page.hanging(2, "-", rule.rule() + " " + rule.title());
      page.hanging(6, "missing:", rule.missing());
    }
    if (reasoning.nearMissesUntold() > 0) {
      page.indented(
          2,
          reasoning.nearMissesUntold()
              + " more were one condition short, but further off. Ask for one with --rule ID.");
    }
  }

  private void influences() {
    page.heading("Influence of each observation");
    if (advice.influence().isEmpty()) {
      page.indented(2, "No observation entered the timeline.");
      return;
    }
    ObservationWords names = new ObservationWords(cycle);
    page.preformatted("   shift h   width h   odd   observation");
    for (Influence influence : advice.influence()) {
      String numbers =
          String.format(
              Locale.ROOT,
              " %+9.1f %+9.1f %5.2f  ",
              influence.ovulationShiftHours(),
              influence.widthChangeHours(),
              influence.oddProbability());
      page.hanging(0, numbers, names.of(influence.observation()));
    }
    page.indented(
        2,
        "Shift: median of ovulation with it less without it. Width: of the 90 % interval, with it"
            + " less without it. Odd: probability that it does not belong with the others.");
  }

  private void timeline() {
    page.heading("Timeline");
    Quantiles peak = advice.lhPeak();
    Ovulation ovulation = advice.ovulation();
    if (peak == null && ovulation == null) {
      page.indented(2, "Nothing can be said.");
      return;
    }
    if (peak != null) {
      quantiles("LH peak", peak);
    }
    if (ovulation == null) {
      return;
    }
    quantiles(
        "ovulation",
        new Quantiles(
            ovulation.median(),
            ovulation.p05(),
            ovulation.p25(),
            ovulation.p75(),
            ovulation.p95()));
    page.indented(2, "ovulation is " + (ovulation.confirmed() ? "proven" : "not proven"));
    page.indented(
        2,
        String.format(
            Locale.ROOT,
            "course: ordinary %.3f, plateau %.3f, no ovulation %.3f",
            ovulation.patterns().ordinary(),
            ovulation.patterns().plateau(),
            ovulation.patterns().noOvulation()));
    page.indented(2, "ovulation by day:");
    for (DayProbability day : ovulation.byDay()) {
      page.preformatted(
          "    "
              + Columns.padded(LocalWords.day(day.day()), 18)
              + String.format(Locale.ROOT, "%.3f ", day.probability())
              + bar(day.probability()));
    }
  }

  private static String bar(double probability) {
    return "#".repeat((int) Math.round(Math.max(0, Math.min(1, probability)) * 40));
  }

  private void quantiles(String what, Quantiles quantiles) {
    page.indented(2, what + ":");
    page.preformatted("     5 %  " + LocalWords.moment(quantiles.p05()));
    page.preformatted("    25 %  " + LocalWords.moment(quantiles.p25()));
    page.preformatted("    50 %  " + LocalWords.moment(quantiles.median()));
    page.preformatted("    75 %  " + LocalWords.moment(quantiles.p75()));
    page.preformatted("    95 %  " + LocalWords.moment(quantiles.p95()));
  }

  private void cited() {
    List<String> keys = advice.sources();
    if (keys.isEmpty()) {
      return;
    }
    page.heading(SOURCES);
    for (String key : keys) {
      if (sources.contains(key)) {
        Source source = sources.get(key);
        page.hanging(2, key + ":", source.citation() + " Read as: " + source.readAs() + ".");
      } else {
        page.hanging(2, key + ":", "not in the source list");
      }
    }
  }
}
