package io.github.tiderule.cases.odd;

import io.github.tiderule.engine.CycleRecord;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One evening on which the engine is asked.
 *
 * @param day in days of {@link Truth}
 * @param next when it is asked again; a day later where nothing more is tested
 * @param told the record as typed; null where no record can be made of it, so that it is refused
 * @param withoutSlip the same without any slip; null where there was none so far
 * @param slipped ids of the observations that are not what was measured in her
 * @param bred whether the doses are given
 */
record Asked(
    double day,
    double next,
    @Nullable CycleRecord told,
    @Nullable CycleRecord withoutSlip,
    Set<String> slipped,
    boolean bred) {

  Asked {
    slipped = Set.copyOf(slipped);
  }
}
