package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The first day of blood this season.
 *
 * @param on the day; absent exactly when the certainty is unknown and nobody ventured a day
 */
public record FirstBlood(@Nullable LocalDate on, Certainty certainty) {}
