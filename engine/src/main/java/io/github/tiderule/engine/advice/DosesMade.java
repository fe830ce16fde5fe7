package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.fact.semen.Route;
import org.jspecify.annotations.Nullable;

/**
 * How many doses the usable sperm make by one route.
 *
 * @param floorMillion least usable sperm of a dose, in millions
 * @param targetMillion usable sperm a dose should hold, in millions
 * @param least doses it surely makes at the floor
 * @param most doses it may make at the floor
 * @param targetLeast doses it surely makes at the target
 * @param targetMost doses it may make at the target
 * @param shortMillion what one dose lacks to the floor, at best; 0 where it lacks nothing
 * @param unitsForOne straws, vials or pellets that reach the floor; absent for other semen
 */
public record DosesMade(
    Route route,
    double floorMillion,
    double targetMillion,
    int least,
    int most,
    int targetLeast,
    int targetMost,
    double shortMillion,
    @Nullable Integer unitsForOne) {}
