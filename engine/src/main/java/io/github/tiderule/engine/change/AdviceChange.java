package io.github.tiderule.engine.change;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What changed from one answer about a season to a later one.
 *
 * @param observations that differ, most moving first
 * @param rules that speak in one answer only: those of stages after reading, whose words are about
 *     single entries, in the order of the trace, first those that speak now
 * @param cautionsAdded cautions of the later answer only
 * @param cautionsGone cautions of the earlier answer only
 * @param rulesRevised whether the two answers come from different rules, parameters or sources, so
 *     that something may have changed for no observation at all
 */
public record AdviceChange(
    Advice before,
    Advice after,
    List<ObservationChange> observations,
    OvulationChange ovulation,
    PlanChange plan,
    List<RuleChange> rules,
    List<Warning> cautionsAdded,
    List<Warning> cautionsGone,
    boolean rulesRevised) {

  public AdviceChange {
    observations = List.copyOf(observations);
    rules = List.copyOf(rules);
    cautionsAdded = List.copyOf(cautionsAdded);
    cautionsGone = List.copyOf(cautionsGone);
  }

  /**
   * What changed between two answers.
   *
   * @throws IllegalArgumentException if they are about two females with names of their own, or the
   *     first is for a later moment than the second
   */
  public static AdviceChange between(Told before, Told after) {
    Advice was = before.advice();
    Advice is = after.advice();
    if (was.femaleId() != null && is.femaleId() != null && !was.femaleId().equals(is.femaleId())) {
      throw new IllegalArgumentException(
          "two females: " + was.femaleId() + " and " + is.femaleId());
    }
    if (was.asOf().toInstant().isAfter(is.asOf().toInstant())) {
      throw new IllegalArgumentException(
          "the first answer is for " + was.asOf() + ", after the second's " + is.asOf());
    }
    return new AdviceChange(
        was,
        is,
        ObservationChanges.between(before, after),
        ovulation(was.timing().ovulation(), is.timing().ovulation()),
        PlanChanges.between(was.breeding().plan(), after),
        rules(was, is),
        without(is.cautions(), was.cautions()),
        without(was.cautions(), is.cautions()),
        !was.stamp().equals(is.stamp()));
  }

  /** Whether what to do, the days and the estimate are all as they were. */
  public boolean nothingMoved() {
    return Objects.equals(before.action(), after.action())
        && Objects.equals(before.timing().ovulation(), after.timing().ovulation())
        && Objects.equals(before.breeding().plan(), after.breeding().plan())
        && Objects.equals(before.testing().next(), after.testing().next())
        && before.breeding().days().equals(after.breeding().days())
        && cautionsAdded.isEmpty()
        && cautionsGone.isEmpty();
  }

  private static OvulationChange ovulation(@Nullable Ovulation was, @Nullable Ovulation is) {
    return new OvulationChange(
        was == null ? null : was.median(),
        is == null ? null : is.median(),
        was == null || is == null ? null : hours(was.median(), is.median()),
        was == null ? null : hours(was.p05(), was.p95()),
        is == null ? null : hours(is.p05(), is.p95()));
  }

  private static double hours(OffsetDateTime from, OffsetDateTime to) {
    return Duration.between(from, to).toMinutes() / 60.0;
  }

  private static List<Warning> without(List<Warning> all, List<Warning> known) {
    return all.stream()
        .filter(one -> known.stream().noneMatch(other -> other.rule().equals(one.rule())))
        .toList();
  }

  private static List<RuleChange> rules(Advice was, Advice is) {
    List<RuleChange> changes = new ArrayList<>(only(is, was, true));
    changes.addAll(only(was, is, false));
    return changes;
  }

  /** Rules with a line in one answer and none in the other, one entry a rule. */
  private static List<RuleChange> only(Advice one, Advice other, boolean speaks) {
    Map<Integer, RuleChange> byOrder = new TreeMap<>();
    List<String> seen = new ArrayList<>();
    for (TraceLine line : one.reasoning().trace()) {
      boolean ofInterest = line.stage() != TraceStage.READING && !seen.contains(line.rule());
      boolean alsoThere =
          other.reasoning().trace().stream().anyMatch(there -> there.rule().equals(line.rule()));
      if (ofInterest && !alsoThere) {
        seen.add(line.rule());
        byOrder.put(
            line.seq(),
            new RuleChange(
                line.rule(),
                line.stage(),
                line.title(),
                speaks,
                line.concluded(),
                line.matched(),
                line.sources()));
      }
    }
    return List.copyOf(byOrder.values());
  }
}
