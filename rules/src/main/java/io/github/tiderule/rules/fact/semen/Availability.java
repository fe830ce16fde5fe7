package io.github.tiderule.rules.fact.semen;

import java.time.Instant;

/** A span in which stud or clinic is there; {@code from} is before {@code to}. */
public record Availability(Instant from, Instant to) {}
