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
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

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
    boolean act = TestChoice.acts(dated.season(), test.outcome());
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
                    (edge, days) ->
                        Sentence.of(
                            flip.above()
                                ? "If progesterone on {} is above {}, the days become {}"
                                : "If progesterone on {} is below {}, the days become {}",
                            clock.day(test.draw().at()),
                            edge,
                            days)))
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
    return flips.from(value.ngPerMl(), tools.value("planning.flip-chance")).stream()
        .map(
            flip ->
                change(
                    flip,
                    value.id(),
                    (edge, days) ->
                        Sentence.of(
                            flip.above()
                                ? "Had progesterone {:of} been above {}, the days would be {}"
                                : "Had progesterone {:of} been below {}, the days would be {}",
                            value(value),
                            edge,
                            days)))
        .toList();
  }

  private Part value(Evidence.Value value) {
    return new Part.Drawn(
        value.id(), clock.offset(dated.season().axis().instant(value.day())).toLocalDate());
  }

  private Change change(
      Flips.Flip flip, String observation, BiFunction<Part, Part, Sentence> words) {
    double edge = Digits.significant(flip.ngPerMl(), 2);
    return new Change(
        words.apply(Part.both(edge), breeding.days(flip.slots())),
        observation,
        flip.above() ? null : edge,
        flip.above() ? edge : null,
        breeding.times(flip.slots()));
  }
}
