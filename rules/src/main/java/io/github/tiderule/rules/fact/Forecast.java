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
 * @param irregularProbability 0–1, that her values follow no known course
 * @param failingProbability 0–1, that she ovulates and her corpora lutea fail early
 * @param brokenOffProbability 0–1, that her level rises and falls back without ovulation; part of
 *     {@code noOvulationProbability}
 * @param fit 0–1, how well all her progesterone numbers, taken as right, fit together: the
 *     posterior predictive probability of numbers that fit worse; 1 where there is none
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
    double plateauProbability,
    double irregularProbability,
    double failingProbability,
    double brokenOffProbability,
    double fit) {}
