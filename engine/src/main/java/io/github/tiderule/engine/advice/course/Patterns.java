package io.github.tiderule.engine.advice.course;

/**
 * Posterior probabilities of the three courses a season can take; they sum to 1.
 *
 * @param ordinary progesterone rises from base through the LH peak to ovulation
 * @param plateau it rests at a raised level for days before the surge
 * @param noOvulation she does not ovulate this time
 */
public record Patterns(double ordinary, double plateau, double noOvulation) {}
