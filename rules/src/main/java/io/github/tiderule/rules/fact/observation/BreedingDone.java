package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;

/** A mating or insemination that has taken place. */
public record BreedingDone(String id, Instant at, Semen semen, Route route)
    implements Observation {}
