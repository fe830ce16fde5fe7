package io.github.tiderule.rules.fact.observation;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One vaginal smear.
 *
 * @param cornifiedPercent share of cornified cells, 0–100, if counted
 * @param neutrophils how many neutrophils, if looked for
 */
public record Smear(
    String id, Instant at, @Nullable Double cornifiedPercent, @Nullable Neutrophils neutrophils)
    implements Observation {}
