package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.rules.condition.ConditionSeen;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.sentence.Sentence;
import io.github.tiderule.rules.source.Sources;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What was concluded at one stage.
 *
 * @param stage its word, as in a trace
 * @param rules what each rule said, in the order they first spoke
 */
public record Argument(String stage, List<Spoken> rules) {

  /** The stages in the order a record goes through them; the estimate of the engine is one. */
  public static final List<String> STAGES =
      List.of("reading", "findings", "timeline", "days", "next", "care");

  /**
   * What one rule said at a stage.
   *
   * @param steps each time it spoke
   */
  public record Spoken(String rule, String title, List<Step> steps, List<Cited> sources) {

    /** Whether it is known what its conditions saw. */
    public boolean isExplained() {
      return steps.stream().anyMatch(step -> !step.saw().isEmpty() || !step.parameters().isEmpty());
    }
  }

  /**
   * One conclusion.
   *
   * @param number its place in the trace
   * @param from what it rests on; empty where that is no observation
   * @param parameters the numbers it used, each with its value
   * @param saw what its conditions saw; empty for the engine's own steps
   */
  public record Step(
      int number,
      List<String> sentences,
      List<Named> from,
      List<String> parameters,
      List<Seen> saw) {}

  /** The stages, each with what of it a filter keeps. */
  static List<Argument> all(
      CycleRecord cycle, Reasoning reasoning, Sources sources, Filter filter, Telling telling) {
    Map<String, LocalDate> drawnOn =
        cycle.observations().stream()
            .collect(
                Collectors.toMap(
                    Observation::id, one -> one.at().atZone(cycle.zone()).toLocalDate()));
    Map<String, List<TraceLine>> stages = new HashMap<>();
    for (TraceLine line : reasoning.advice().reasoning().trace()) {
      if (filter.keeps(line, drawnOn)) {
        stages
            .computeIfAbsent(line.stage().word(), stage -> new ArrayList<>())
            .add(wanted(line, filter.wanted(line, drawnOn)));
      }
    }
    return STAGES.stream()
        .map(
            stage ->
                new Argument(
                    stage,
                    rules(stages.getOrDefault(stage, List.of()), reasoning, sources, telling)))
        .toList();
  }

  private static List<Spoken> rules(
      List<TraceLine> lines, Reasoning reasoning, Sources sources, Telling telling) {
    Map<String, List<TraceLine>> byRule = new LinkedHashMap<>();
    for (TraceLine line : lines) {
      byRule.computeIfAbsent(line.rule(), rule -> new ArrayList<>()).add(line);
    }
    return byRule.entrySet().stream()
        .map(
            rule ->
                new Spoken(
                    rule.getKey(),
                    rule.getValue().get(0).title(),
                    rule.getValue().stream()
                        .map(line -> step(line, reasoning.conditions(line), telling))
                        .toList(),
                    Cited.all(
                        rule.getValue().stream().flatMap(line -> line.sources().stream()).toList(),
                        sources)))
        .toList();
  }

  /** A step with what of its sentences is wanted. */
  private static TraceLine wanted(TraceLine line, List<Sentence> sentences) {
    return new TraceLine(
        line.seq(),
        line.stage(),
        line.rule(),
        line.title(),
        line.matched(),
        sentences,
        line.sources());
  }

  private static Step step(TraceLine line, List<ConditionSeen> conditions, Telling telling) {
    return new Step(
        line.seq(),
        telling.say(line.concluded()),
        Named.all(line.matched(), telling),
        conditions.stream()
            .map(ConditionSeen::parameter)
            .flatMap(Stream::ofNullable)
            .map(telling::say)
            .toList(),
        Seen.spoke(conditions.stream().filter(seen -> seen.parameter() == null).toList(), telling));
  }

  /** How many conclusions there are. */
  public int count() {
    return rules.stream().mapToInt(rule -> rule.steps().size()).sum();
  }
}
