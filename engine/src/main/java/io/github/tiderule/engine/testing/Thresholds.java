package io.github.tiderule.engine.testing;

import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.days.Flips;
import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.timeline.ComingValue;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.Foresight;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The values of the next progesterone test, and of the latest, at which the days would change. */
final class Thresholds {

  private final Dated dated;
  private final Tools tools;
  private final Clock clock;
  private final SemenPlan semenPlan;
  private final Foresight foresight;
  private final Breeding breeding;
  private final ScoredPlan plan;

  /**
   * @param plan the best set of doses
   */
  Thresholds(Dated dated, Foresight foresight, Breeding breeding, ScoredPlan plan) {
    this.dated = dated;
    this.foresight = foresight;
    this.breeding = breeding;
    this.plan = plan;
    tools = dated.season().tools();
    clock = dated.season().clock();
    semenPlan = dated.season().semenPlan();
  }

  /** For a draw to come. */
  List<Change> ofNext(TestChoice.Valued test, ComingValue value) {
    boolean act = test.outcome().actRather();
    List<Integer> settled = act ? test.outcome().settled() : List.of();
    Flips flips =
        Flips.of(
            breeding.table(),
            tools.rules().parameters(),
            breeding.forbidden(),
            tools.planner().spacing(semenPlan),
            plan,
            settled,
            test.draw().result(),
            value);
    return flips.from(flips.middle(), tools.value("planning.flip-chance")).stream()
        .map(
            flip ->
                change(
                    flip,
                    "next",
                    "If progesterone on " + clock.day(test.draw().at()) + " is ",
                    ", the days become "))
        .toList();
  }

  /** For the latest number in use. */
  List<Change> ofLatest() {
    Optional<Evidence.Value> latest =
        dated.evidence().values().stream()
            .max(Comparator.comparingDouble(Evidence.Value::day).thenComparing(Evidence.Value::id));
    if (latest.isEmpty()) {
      return List.of();
    }
    Evidence.Value value = latest.get();
    Flips flips =
        Flips.of(
            breeding.table(),
            tools.rules().parameters(),
            breeding.forbidden(),
            tools.planner().spacing(semenPlan),
            plan,
            List.of(),
            dated.season().asOf(),
            foresight.again(value.id()));
    String when = clock.day(dated.season().axis().instant(value.day()));
    return flips.from(value.ngPerMl(), tools.value("planning.flip-chance")).stream()
        .map(
            flip ->
                change(
                    flip,
                    value.id(),
                    "Had progesterone " + value.id() + " of " + when + " been ",
                    ", the days would be "))
        .toList();
  }

  private Change change(Flips.Flip flip, String observation, String start, String end) {
    double edge = Digits.significant(flip.ngPerMl(), 2);
    String words =
        start
            + (flip.above() ? "above " : "below ")
            + Digits.bothUnits(edge)
            + end
            + breeding.days(flip.slots());
    return new Change(
        words,
        observation,
        flip.above() ? null : edge,
        flip.above() ? edge : null,
        breeding.times(flip.slots()));
  }
}
