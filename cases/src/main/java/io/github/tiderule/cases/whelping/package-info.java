/**
 * Simulated pregnancies, and how well their whelping is foretold.
 *
 * <p>Females are those of {@code io.github.tiderule.cases.cohort}; how long they carry is decided
 * here by {@link GestationLaw laws} that are not the engine's: heavier tails, litters of their own,
 * and two worlds, since the published spreads cannot both be exact. No number is read from the
 * engine's parameter files but the lines of fetal measurement, of which no second source is at
 * hand.
 */
@NullMarked
package io.github.tiderule.cases.whelping;

import org.jspecify.annotations.NullMarked;
