/**
 * What share of her eggs is met when seasons are simulated day by day and bred by our plan, by
 * rules of thumb, and by one who knows the true ovulation.
 *
 * <p>Females, laboratories and smears are those of {@link io.github.tiderule.cases.cohort}. {@link
 * EggLaw} is the truth about eggs and sperm; it is no part of the engine, reads none of its
 * parameters, and is of another family; it holds in several worlds, since what is published leaves
 * open how long eggs live and when thawed sperm finds them ready. {@link Keeper} is somebody who
 * does what the engine says: she tests when it says test, waits for the result, and commits to the
 * plan at the last moment at which it can still be carried out. {@link Thumb} is somebody with a
 * rule of thumb, {@link Knower} one who knows the true ovulation and the law of the eggs, and is
 * bound to the same clock windows and couriers.
 */
@NullMarked
package io.github.tiderule.cases.plans;

import org.jspecify.annotations.NullMarked;
