/**
 * Simulated seasons that the engine's model did not make, and what the engine says of them.
 *
 * <p>Three things are kept apart: the females ({@link Bitch} and how they are {@linkplain Bitches
 * drawn}), how somebody samples them ({@link SamplingHabit}, {@link Laboratory}, {@link
 * SmearReader}), and how an answer is scored ({@link Score}). A bitch knows her true times and her
 * true progesterone, so other questions than the day of ovulation can be put to the same seasons.
 *
 * <p>The curves come from another family than the engine's, the noise has other tails, and no
 * number is read from the engine's parameter files. The figures the generator is set to are
 * published ranges, named where they are used; everything else is this generator's own judgement.
 */
@NullMarked
package io.github.tiderule.cases.cohort;

import org.jspecify.annotations.NullMarked;
