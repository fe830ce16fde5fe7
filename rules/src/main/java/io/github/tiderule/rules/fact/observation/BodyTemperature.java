package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/**
 * One rectal temperature.
 *
 * @param celsius degrees Celsius, 30–44
 */
public record BodyTemperature(String id, Instant at, double celsius) implements Observation {

  /**
   * A temperature.
   *
   * @param celsius degrees Celsius, 30–44
   */
  public static BodyTemperature of(double celsius, Instant at) {
    return new BodyTemperature(UNNAMED, at, celsius);
  }

  @Override
  public BodyTemperature withId(String id) {
    return new BodyTemperature(id, at, celsius);
  }
}
