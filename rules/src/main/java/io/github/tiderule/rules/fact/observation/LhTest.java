package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/** One LH test. */
public record LhTest(String id, Instant at, boolean positive) implements Observation {}
