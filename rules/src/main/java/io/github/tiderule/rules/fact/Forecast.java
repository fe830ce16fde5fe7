package io.github.tiderule.rules.fact;

import java.time.Instant;

/**
 * What the timeline says of ovulation, for the rules that come after it.
 *
 * @param p05 to {@code p95}: posterior quantiles of ovulation, given that she ovulates
 * @param daysToMedian days from now to the median; negative when it has passed
 * @param width90Days days between p05 and p95
 * @param noOvulationProbability 0–1
 * @param plateauProbability 0–1
 */
public record Forecast(
    Instant p05,
    Instant p25,
    Instant median,
    Instant p75,
    Instant p95,
    double daysToMedian,
    double width90Days,
    double noOvulationProbability,
    double plateauProbability) {}
