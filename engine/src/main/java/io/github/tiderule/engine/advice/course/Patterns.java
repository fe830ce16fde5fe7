package io.github.tiderule.engine.advice.course;

/**
 * Posterior probabilities of the courses a season can take. The first three sum to 1; the others
 * are parts of them that are told of by themselves.
 *
 * @param ordinary progesterone rises from base through the LH peak to ovulation
 * @param plateau it rests at a raised level for days before the surge
 * @param noOvulation she does not ovulate this time
 * @param irregular part of {@code ordinary}: her values follow no known course
 * @param failing part of {@code ordinary}: she ovulates and the level falls early afterwards
 * @param brokenOff part of {@code noOvulation}: the level rises and falls back
 */
public record Patterns(
    double ordinary,
    double plateau,
    double noOvulation,
    double irregular,
    double failing,
    double brokenOff) {}
