package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/** One ultrasound look at the ovaries. */
public record OvaryScan(String id, Instant at, OvaryFinding finding) implements Observation {

  /** What the ovaries show. */
  public static OvaryScan of(OvaryFinding finding, Instant at) {
    return new OvaryScan(UNNAMED, at, finding);
  }

  @Override
  public OvaryScan withId(String id) {
    return new OvaryScan(id, at, finding);
  }
}
