package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;

/**
 * Something that must be done in time for a plan to hold.
 *
 * @param by the last safe time
 * @param forTime the breeding it is for; the first one where it serves several
 * @param text in words
 */
public record Commitment(
    CommitmentKind kind, OffsetDateTime by, OffsetDateTime forTime, Sentence text) {}
