package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/**
 * One sign, seen or looked for and not seen.
 *
 * @param present whether the sign was there
 */
public record Sign(String id, Instant at, SignKind sign, boolean present) implements Observation {}
