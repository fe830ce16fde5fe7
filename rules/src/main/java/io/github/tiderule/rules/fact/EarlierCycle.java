package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** An earlier season of the same female. */
public record EarlierCycle(LocalDate firstBloodOn, @Nullable LocalDate ovulatedOn) {}
