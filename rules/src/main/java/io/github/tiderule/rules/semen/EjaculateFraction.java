package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.semen.SemenColour;
import org.jspecify.annotations.Nullable;

/**
 * One tube of an ejaculate.
 *
 * @param volumeMl in millilitres, above 0, if measured
 * @param appearance what it looks like, if somebody looked
 */
public record EjaculateFraction(
    Fraction fraction, @Nullable Double volumeMl, @Nullable SemenColour appearance) {}
