package io.github.tiderule.engine.days;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A clock window in which she could be bred.
 *
 * @param day its local day
 * @param middle the time it stands for
 * @param ageHours age of chilled semen then
 * @param orderBy last time to order for it, where semen is ordered
 */
public record Slot(
    LocalDate day,
    Instant from,
    Instant to,
    Instant middle,
    double ageHours,
    @Nullable Instant orderBy) {}
