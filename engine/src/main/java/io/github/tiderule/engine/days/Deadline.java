package io.github.tiderule.engine.days;

import io.github.tiderule.engine.advice.CommitmentKind;
import java.time.Instant;

/**
 * Something that must be done by a time for a slot to be used.
 *
 * @param by the last safe time, not before the moment of the advice
 */
public record Deadline(CommitmentKind kind, Instant by) {}
