package io.github.tiderule.engine.advice;

import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import org.jspecify.annotations.Nullable;

/**
 * When she ovulates, and what her values do.
 *
 * @param lhPeak absent where nothing can be said
 * @param ovulation absent where nothing can be said
 * @param seasonCourse what her values do; absent where no value tells
 */
public record AdviceTiming(
    @Nullable Quantiles lhPeak,
    @Nullable Ovulation ovulation,
    @Nullable SeasonCourse seasonCourse) {

  /** Nothing said. */
  public static final AdviceTiming NONE = new AdviceTiming(null, null, null);

  public AdviceTiming withLhPeak(@Nullable Quantiles lhPeak) {
    return new AdviceTiming(lhPeak, ovulation, seasonCourse);
  }

  public AdviceTiming withOvulation(@Nullable Ovulation ovulation) {
    return new AdviceTiming(lhPeak, ovulation, seasonCourse);
  }

  public AdviceTiming withSeasonCourse(@Nullable SeasonCourse seasonCourse) {
    return new AdviceTiming(lhPeak, ovulation, seasonCourse);
  }
}
