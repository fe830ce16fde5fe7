package io.github.tiderule.engine.change;

import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * How the estimate of ovulation moved.
 *
 * @param before middle of ovulation in the earlier answer; absent where it said nothing
 * @param after middle in the later answer
 * @param shiftHours hours from before to after, later is positive; absent where one of them is
 * @param widthBeforeHours the 9-in-10 span of the earlier answer
 * @param widthAfterHours that of the later one
 */
public record OvulationChange(
    @Nullable OffsetDateTime before,
    @Nullable OffsetDateTime after,
    @Nullable Double shiftHours,
    @Nullable Double widthBeforeHours,
    @Nullable Double widthAfterHours) {}
