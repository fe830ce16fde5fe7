package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/** One ultrasound look at the ovaries. */
public record OvaryScan(String id, Instant at, OvaryFinding finding) implements Observation {}
