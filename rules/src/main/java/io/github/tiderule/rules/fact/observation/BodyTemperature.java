package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/**
 * One rectal temperature.
 *
 * @param celsius degrees Celsius
 */
public record BodyTemperature(String id, Instant at, double celsius) implements Observation {}
