package io.github.tiderule.rules.fact;

import java.time.Instant;

/** One LH test. */
public record LhTest(String id, Instant at, boolean positive) implements Observation {}
