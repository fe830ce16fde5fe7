package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;

/** A mating or insemination that has taken place. */
public record BreedingDone(String id, Instant at, Semen semen, Route route) implements Observation {

  /** A breeding by the usual route of its semen. */
  public static BreedingDone of(Semen semen, Instant at) {
    return new BreedingDone(UNNAMED, at, semen, Route.usualFor(semen));
  }

  /** By another route. */
  public BreedingDone route(Route route) {
    return new BreedingDone(id, at, semen, route);
  }

  @Override
  public BreedingDone withId(String id) {
    return new BreedingDone(id, at, semen, route);
  }
}
