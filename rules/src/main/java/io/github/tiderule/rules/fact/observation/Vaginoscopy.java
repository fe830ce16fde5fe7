package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/** One look at the vaginal folds. */
public record Vaginoscopy(String id, Instant at, Folds folds) implements Observation {

  /** What the folds look like. */
  public static Vaginoscopy of(Folds folds, Instant at) {
    return new Vaginoscopy(UNNAMED, at, folds);
  }

  @Override
  public Vaginoscopy withId(String id) {
    return new Vaginoscopy(id, at, folds);
  }
}
