package io.github.tiderule.api.paper;

import io.github.tiderule.api.report.TraceReport;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.reasoning.NotFired;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.rules.source.Sources;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The reasoning in short: each rule that spoke, from what, by which sources. */
final class TraceParts {

  private static final Texts TEXTS = Texts.ofReports();

  /** From this step on sources stand one after the other in one paragraph. */
  private static final int RUN_ON = 3;

  private final Reasoning reasoning;
  private final Telling telling;
  private final List<Section> sections;

  TraceParts(CycleRecord cycle, Reasoning reasoning, Sources sources) {
    this.reasoning = reasoning;
    this.telling = Telling.onTerminal(cycle);
    this.sections = TraceReport.sections(cycle, reasoning, sources);
  }

  /** What was concluded, stage by stage; what one rule says of several things stands together. */
  void trace(Html html, Room room) {
    html.heading(TEXTS.say("paper.reasoning"));
    Map<TraceStage, Map<String, List<TraceLine>>> stages = new LinkedHashMap<>();
    for (TraceLine line : reasoning.advice().reasoning().trace()) {
      stages
          .computeIfAbsent(line.stage(), stage -> new LinkedHashMap<>())
          .computeIfAbsent(line.rule(), rule -> new ArrayList<>())
          .add(line);
    }
    stages.forEach(
        (stage, rules) ->
            html.paragraph("", TEXTS.say("trace.stage", stage) + ":")
                .list(
                    "small",
                    rules.values().stream().map(lines -> words(lines, room)).toList(),
                    room.most(40, 30, 22, 16, 12, 9, 6)));
  }

  private String words(List<TraceLine> lines, Room room) {
    TraceLine first = lines.get(0);
    List<String> matched =
        lines.stream().flatMap(line -> line.matched().stream()).distinct().toList();
    List<String> sources =
        lines.stream().flatMap(line -> line.sources().stream()).distinct().toList();
    List<String> concluded =
        lines.stream().flatMap(line -> telling.say(line.concluded()).stream()).distinct().toList();
    int told = room.most(8, 5, 4, 3, 2, 1);
    String rest =
        concluded.size() > told ? "; " + TEXTS.say("paper.and-more", concluded.size() - told) : "";
    return first.rule()
        + " "
        + first.title()
        + ": "
        + String.join("; ", concluded.subList(0, Math.min(told, concluded.size())))
        + rest
        + "."
        + (matched.isEmpty() ? "" : " " + TEXTS.say("changes.from", listed(matched, room)))
        + (sources.isEmpty() ? "" : " [" + String.join(", ", sources) + "]");
  }

  private static String listed(List<String> ids, Room room) {
    int most = room.most(12, 8, 6, 4);
    return String.join(", ", ids.subList(0, Math.min(most, ids.size())))
        + (ids.size() > most ? " " + TEXTS.say("paper.and-more", ids.size() - most) : "");
  }

  /** Where schools disagree, and which way the plan leans. */
  void schools(Html html, Room room) {
    Section section = Section.of(sections, SectionKind.SCHOOLS);
    if (!section.lines().isEmpty()) {
      html.heading(section.heading())
          .open("small")
          .lines(section, room.most(40, 30, 24, 20, 16, 12, 8))
          .close();
    }
  }

  /** Which rules were near to speaking. */
  void notFired(Html html, Room room) {
    List<String> near =
        reasoning.advice().reasoning().notFired().stream().map(this::words).toList();
    if (!near.isEmpty()) {
      html.heading(TEXTS.say("trace.not-fired"))
          .list("small", near, room.most(12, 10, 8, 6, 4, 3, 2));
    }
  }

  private String words(NotFired rule) {
    return TEXTS.say(
        "paper.not-fired", rule.rule(), rule.title(), telling.sayWithin(rule.missing()));
  }

  /** Every source cited, in full; as small as it must be, but never cut. */
  void sources(Html html, Room room) {
    Section section = Section.of(sections, SectionKind.SOURCES);
    if (!section.lines().isEmpty()) {
      html.heading(section.heading()).open("small").whole(section, room.step() >= RUN_ON).close();
    }
  }

  /** The hash of the rules in full. */
  void stamp(Html html, Room room) {
    html.open("stamp").lines(Section.of(sections, SectionKind.FOOT), 6).close();
  }
}
