package io.github.tiderule.engine.advice.course;

import java.time.OffsetDateTime;
import java.util.List;

/**
 * When she ovulates, given that she does.
 *
 * @param confirmed whether a proof of ovulation is among the findings
 * @param byDay sums to 1 less {@code noOvulationProbability}
 * @param fit how well all progesterone numbers, taken as right, fit together: the posterior
 *     predictive probability of numbers that fit worse; 1 where there is none
 */
public record Ovulation(
    OffsetDateTime median,
    OffsetDateTime p05,
    OffsetDateTime p25,
    OffsetDateTime p75,
    OffsetDateTime p95,
    boolean confirmed,
    List<DayProbability> byDay,
    double noOvulationProbability,
    Patterns patterns,
    double fit) {

  public Ovulation {
    byDay = List.copyOf(byDay);
  }
}
