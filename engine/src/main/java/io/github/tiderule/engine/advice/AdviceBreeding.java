package io.github.tiderule.engine.advice;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * On which days to breed her, and what breeding them takes.
 *
 * @param days by rank, best first
 * @param plan absent where nothing can be planned
 * @param bred absent where no breeding is done yet
 * @param insemination the sheet for the day; absent where the file describes no semen and no
 *     insemination is close
 */
public record AdviceBreeding(
    List<BreedingDay> days,
    @Nullable Plan plan,
    @Nullable Bred bred,
    @Nullable InseminationSheet insemination) {

  /** Nothing said. */
  public static final AdviceBreeding NONE = new AdviceBreeding(List.of(), null, null, null);

  public AdviceBreeding {
    days = List.copyOf(days);
  }

  public AdviceBreeding withDays(List<BreedingDay> days) {
    return new AdviceBreeding(days, plan, bred, insemination);
  }

  public AdviceBreeding withPlan(@Nullable Plan plan) {
    return new AdviceBreeding(days, plan, bred, insemination);
  }

  public AdviceBreeding withBred(@Nullable Bred bred) {
    return new AdviceBreeding(days, plan, bred, insemination);
  }

  public AdviceBreeding withInsemination(@Nullable InseminationSheet insemination) {
    return new AdviceBreeding(days, plan, bred, insemination);
  }
}
