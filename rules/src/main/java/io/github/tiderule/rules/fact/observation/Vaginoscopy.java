package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/** One look at the vaginal folds. */
public record Vaginoscopy(String id, Instant at, Folds folds) implements Observation {}
