package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;

/**
 * Something that must be done in time for a plan to hold.
 *
 * @param kind {@code order}, {@code book} or {@code leave}
 * @param by the last safe time
 * @param forTime the breeding it is for; the first one where it serves several
 * @param text in words
 */
public record Commitment(String kind, OffsetDateTime by, OffsetDateTime forTime, Sentence text) {}
