package io.github.tiderule.api.report;

import io.github.tiderule.api.report.rulebook.ConditionLines;
import io.github.tiderule.api.report.text.Columns;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.PlainNumber;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.DayProbability;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.engine.advice.reasoning.Influence;
import io.github.tiderule.engine.advice.reasoning.LocalProtocol;
import io.github.tiderule.engine.advice.reasoning.NotFired;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.rules.source.Source;
import io.github.tiderule.rules.source.Sources;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The reasoning for a vet: every firing by stage with its observations, its sources and what its
 * conditions saw, what did not fire and why, and the numbers of the timeline. Plain text of at most
 * 80 columns.
 */
public final class TraceReport {

  private static final Texts TEXTS = Texts.ofReports();

  /** What is said of a source that is not in the list. */
  public static final String NOT_LISTED = TEXTS.say("trace.no-source");

  private final CycleRecord cycle;
  private final Reasoning reasoning;
  private final Advice advice;
  private final Sources sources;
  private final Telling telling;
  private final Words words;
  private final Page page;

  private TraceReport(CycleRecord cycle, Reasoning reasoning, Sources sources) {
    this.cycle = cycle;
    this.reasoning = reasoning;
    this.advice = reasoning.advice();
    this.sources = sources;
    this.telling = Telling.onTerminal(cycle);
    this.words = telling.words();
    this.page = new Page(telling);
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
    page.line(TEXTS.say("trace.title", Telling.who(name, id)));
    page.line(TEXTS.say("report.moment", words.moment(advice.asOf()), cycle.zone()));
    page.line(TEXTS.say("trace.outcome", telling.sayWithin(advice.action().headline())));
    if (!advice.action().because().isEmpty()) {
      page.line(TEXTS.say("trace.outcome.by", String.join(", ", advice.action().because())));
    }
    localProtocol();
    firings();
    notFired();
    Doubts.writeDisagreementsWithSources(page, advice);
    influences();
    timeline();
    cited();
    page.gap();
    page.line(TEXTS.say("stamp.engine", advice.stamp().engine()));
    page.line(advice.stamp().rules());
    page.line(TEXTS.say("stamp.no-vet"));
    return page;
  }

  private void localProtocol() {
    LocalProtocol overlay = advice.stamp().overlay();
    if (overlay == null) {
      return;
    }
    page.heading(SectionKind.LOCAL_PROTOCOL, overlay.name());
    for (LocalProtocol.Change change : overlay.changes()) {
      page.hanging(
          2,
          "-",
          TEXTS.say(
              "trace.local.change",
              change.parameter(),
              PlainNumber.of(change.local()),
              PlainNumber.of(change.usual()),
              change.unit(),
              change.since(),
              change.reason(),
              change.by()));
    }
    page.indented(2, overlay.hash());
  }

  private void firings() {
    @Nullable TraceStage stage = null;
    for (TraceLine line : advice.reasoning().trace()) {
      if (line.stage() != stage) {
        stage = line.stage();
        page.heading(SectionKind.STAGE, stage.word());
      }
      page.hanging(2, line.seq() + ".", line.rule() + " " + line.title());
      page.bullets(6, line.concluded());
      if (!line.matched().isEmpty()) {
        page.hanging(6, TEXTS.say("trace.from"), telling.observations(line.matched()));
      }
      if (!line.sources().isEmpty()) {
        page.hanging(6, TEXTS.say("trace.by"), String.join(", ", line.sources()));
      }
      ConditionLines.brief(page, reasoning.conditions(line));
    }
  }

  private void notFired() {
    page.heading(SectionKind.NOT_FIRED);
    if (advice.reasoning().notFired().isEmpty()) {
      page.indented(2, TEXTS.say("trace.not-fired.none"));
    }
    for (NotFired rule : advice.reasoning().notFired()) {
      page.hanging(2, "-", rule.rule() + " " + rule.title());
      page.hanging(6, TEXTS.say("trace.missing"), rule.missing());
    }
    if (reasoning.nearMissesUntold() > 0) {
      page.indented(2, TEXTS.say("trace.not-fired.more", reasoning.nearMissesUntold()));
    }
  }

  private void influences() {
    page.heading(SectionKind.INFLUENCE);
    if (advice.reasoning().influence().isEmpty()) {
      page.indented(2, TEXTS.say("trace.influence.none"));
      return;
    }
    page.preformatted("   " + TEXTS.say("trace.influence.columns"));
    for (Influence influence : advice.reasoning().influence()) {
      String numbers =
          String.format(
              Locale.ROOT,
              " %+9.1f %+9.1f %5.2f  ",
              influence.ovulationShiftHours(),
              influence.widthChangeHours(),
              influence.oddProbability());
      page.hanging(0, numbers, telling.observation(influence.observation()));
    }
    page.indented(2, TEXTS.say("trace.influence.note"));
  }

  private void timeline() {
    page.heading(SectionKind.TIMELINE);
    Quantiles peak = advice.timing().lhPeak();
    Ovulation ovulation = advice.timing().ovulation();
    if (peak == null && ovulation == null) {
      page.indented(2, TEXTS.say("trace.timeline.nothing"));
      return;
    }
    if (peak != null) {
      quantiles(TEXTS.say("trace.peak"), peak);
    }
    if (ovulation == null) {
      return;
    }
    quantiles(
        TEXTS.say("trace.ovulation"),
        new Quantiles(
            ovulation.median(),
            ovulation.p05(),
            ovulation.p25(),
            ovulation.p75(),
            ovulation.p95()));
    page.indented(2, TEXTS.say(ovulation.confirmed() ? "trace.proven" : "trace.not-proven"));
    page.indented(
        2,
        TEXTS.say(
            "trace.course",
            thousandths(ovulation.patterns().ordinary()),
            thousandths(ovulation.patterns().plateau()),
            thousandths(ovulation.patterns().noOvulation())));
    page.indented(2, TEXTS.say("trace.by-day"));
    for (DayProbability day : ovulation.byDay()) {
      page.preformatted(
          "    "
              + Columns.padded(words.day(day.day()), 18)
              + thousandths(day.probability())
              + " "
              + bar(day.probability()));
    }
  }

  private static String thousandths(double probability) {
    return String.format(Locale.ROOT, "%.3f", probability);
  }

  private static String bar(double probability) {
    return "#".repeat((int) Math.round(Math.max(0, Math.min(1, probability)) * 40));
  }

  private void quantiles(String what, Quantiles quantiles) {
    page.indented(2, what + ":");
    page.preformatted("     5 %  " + words.moment(quantiles.p05()));
    page.preformatted("    25 %  " + words.moment(quantiles.p25()));
    page.preformatted("    50 %  " + words.moment(quantiles.median()));
    page.preformatted("    75 %  " + words.moment(quantiles.p75()));
    page.preformatted("    95 %  " + words.moment(quantiles.p95()));
  }

  private void cited() {
    List<String> keys = advice.sources();
    if (keys.isEmpty()) {
      return;
    }
    page.heading(SectionKind.SOURCES);
    for (String key : keys) {
      if (sources.contains(key)) {
        Source source = sources.get(key);
        page.hanging(2, key + ":", TEXTS.say("trace.read-as", source.citation(), source.readAs()));
      } else {
        page.hanging(2, key + ":", NOT_LISTED);
      }
    }
  }
}
