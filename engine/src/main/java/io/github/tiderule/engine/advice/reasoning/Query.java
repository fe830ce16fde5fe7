package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A question to the keeper.
 *
 * @param about id of an observation
 * @param readings what each answer would mean; may be empty
 */
public record Query(String about, Sentence text, List<Reading> readings) {

  public Query {
    readings = List.copyOf(readings);
  }

  /**
   * What a value would mean in one unit.
   *
   * @param value the number that was meant, where it is another than was entered
   */
  public record Reading(Unit unit, @Nullable Double value, Sentence meaning) {}
}
