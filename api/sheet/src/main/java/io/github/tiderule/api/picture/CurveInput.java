package io.github.tiderule.api.picture;

import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Posterior;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.reasoning.ObservationNote;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What is drawn.
 *
 * @param advice the answer to {@code cycle}
 * @param posterior what the estimator believes; without it, neither course nor densities are drawn
 * @param telling how it is told in words
 */
public record CurveInput(
    CycleRecord cycle, Advice advice, Optional<Posterior> posterior, Telling telling) {

  private static final String HELD = "held";
  private static final String CONVERTED = "converted";

  /** A season and what was reasoned about it. */
  public static CurveInput of(CycleRecord cycle, Reasoning reasoning, Telling telling) {
    return new CurveInput(cycle, reasoning.advice(), reasoning.posterior(), telling);
  }

  /** How days, times and numbers are written. */
  Words words() {
    return telling.words();
  }

  /** How an observation is taken, as a word: {@code taken}, or why it is not simply taken. */
  String use(String observation) {
    Set<String> uses = uses(observation);
    for (String strongest : List.of(HELD, "set-aside")) {
      if (uses.contains(strongest)) {
        return strongest;
      }
    }
    return uses.stream().filter(use -> !use.equals(CONVERTED)).findFirst().orElse("taken");
  }

  boolean taken(String observation) {
    return use(observation).equals("taken");
  }

  /** Whether it bears on the estimate, if only with doubts. */
  boolean counts(String observation) {
    String use = use(observation);
    return !use.equals(HELD) && !use.equals("set-aside");
  }

  boolean held(String observation) {
    return use(observation).equals(HELD);
  }

  private Set<String> uses(String observation) {
    Set<String> uses = new TreeSet<>();
    for (ObservationNote note : advice.reasoning().observationNotes()) {
      if (note.observation().equals(observation)) {
        uses.add(note.use().word());
      }
    }
    return uses;
  }

  <T extends Observation> List<T> all(Class<T> kind) {
    return cycle.observations().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** The laboratories and methods of the season, in order. */
  List<Series> series() {
    return all(Progesterone.class).stream().map(Progesterone::series).distinct().sorted().toList();
  }

  /** The series of the latest number in use: the course is drawn as it reads. */
  Optional<Series> latestSeries() {
    return all(Progesterone.class).stream()
        .filter(value -> value.statedUnit() != null && !held(value.id()))
        .reduce((earlier, later) -> later)
        .map(Progesterone::series);
  }
}
