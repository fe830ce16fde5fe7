package io.github.tiderule.engine.advice.reasoning;

/**
 * What one observation does to the estimate.
 *
 * @param ovulationShiftHours median of ovulation with it less the median without it, in hours
 * @param widthChangeHours width of the 90 % interval with it less the width without it, in hours
 * @param oddProbability probability that this value is the odd one out, 0–1
 */
public record Influence(
    String observation,
    double ovulationShiftHours,
    double widthChangeHours,
    double oddProbability) {}
