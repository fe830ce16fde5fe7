package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What of the reasoning is wanted. Each part that is not empty must be met.
 *
 * @param observation id of an observation; empty for all
 * @param rule id of a rule; empty for all
 * @param day a day as on the wire; empty for all
 */
public record Filter(String observation, String rule, String day) {

  /** Stages whose steps rest on all observations at once. */
  private static final Set<TraceStage> OF_ALL = Set.of(TraceStage.TIMELINE, TraceStage.DAYS);

  /** From the parts of a query. */
  public static Filter of(Function<String, Optional<String>> query) {
    return new Filter(
        query.apply("observation").orElse("").strip(),
        query.apply("rule").orElse("").strip(),
        query.apply("day").orElse("").strip());
  }

  /** Whether everything is wanted. */
  public boolean isEmpty() {
    return observation.isEmpty() && rule.isEmpty() && day.isEmpty();
  }

  /** The day; absent where none, or none that can be read, is asked for. */
  @Nullable LocalDate on() {
    try {
      return day.isEmpty() ? null : LocalDate.parse(day);
    } catch (DateTimeException e) {
      return null;
    }
  }

  /**
   * Whether a step of the trace is wanted.
   *
   * @param drawnOn the day of each observation, where she is, by its id
   */
  boolean keeps(TraceLine line, Map<String, LocalDate> drawnOn) {
    return keepsRule(line.rule())
        && keepsAny(line.matched())
        && (day.isEmpty() || !wanted(line, drawnOn).isEmpty());
  }

  /**
   * The sentences of a step that are wanted. Where a day is asked for: the conclusions about that
   * day, and all that was made of an observation of that day.
   */
  List<Sentence> wanted(TraceLine line, Map<String, LocalDate> drawnOn) {
    LocalDate on = on();
    if (day.isEmpty()) {
      return line.concluded();
    }
    if (on == null) {
      return List.of();
    }
    boolean rests =
        !OF_ALL.contains(line.stage())
            && line.matched().stream().anyMatch(one -> on.equals(drawnOn.get(one)));
    return rests
        ? line.concluded()
        : line.concluded().stream().filter(sentence -> isOf(on, sentence)).toList();
  }

  /** Whether a sentence is about a day: the one it begins with, or else any it names. */
  private static boolean isOf(LocalDate on, Sentence sentence) {
    List<LocalDate> days = sentence.days();
    return sentence.firstDay().map(on::equals).orElseGet(() -> days.contains(on));
  }

  boolean keepsRule(String id) {
    return rule.isEmpty() || rule.equals(id);
  }

  boolean keepsAny(List<String> observations) {
    return observation.isEmpty() || observations.contains(observation);
  }

  boolean keepsDay(LocalDate other) {
    return day.isEmpty() || other.equals(on());
  }
}
