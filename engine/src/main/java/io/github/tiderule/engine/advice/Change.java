package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a value would have to be for the plan to change.
 *
 * @param ifThen in words
 * @param observation id of the observation, or a name for the coming one
 * @param below threshold in ng/mL below which the plan is {@code plan}; absent if there is none
 * @param above threshold in ng/mL above which the plan is {@code plan}; absent if there is none
 * @param plan the times that would then be best; empty where no plan would stand
 */
public record Change(
    Sentence ifThen,
    String observation,
    @Nullable Double below,
    @Nullable Double above,
    List<OffsetDateTime> plan) {

  public Change {
    plan = List.copyOf(plan);
  }
}
