package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.LocalWords;
import io.github.tiderule.engine.advice.TraceLine;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
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

  /** Whether a step of the trace is wanted. */
  boolean keeps(TraceLine line) {
    return keepsRule(line.rule())
        && keepsAny(line.matched())
        && (day.isEmpty() || line.concluded().stream().anyMatch(this::mentions));
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

  /** Whether a sentence of the trace is wanted: one that names the day, where one is asked for. */
  boolean mentions(String sentence) {
    LocalDate on = on();
    return day.isEmpty()
        || (on != null
            && (sentence.contains(on.toString()) || sentence.contains(LocalWords.shortDay(on))));
  }
}
