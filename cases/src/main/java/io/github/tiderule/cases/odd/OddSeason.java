package io.github.tiderule.cases.odd;

import io.github.tiderule.cases.plans.Row;
import java.util.List;

/**
 * One season as somebody kept it.
 *
 * @param begins days from the first day of the calendar to day 0 of the truth
 * @param asked in time order
 */
record OddSeason(Truth truth, Row row, int begins, List<Asked> asked) {

  OddSeason {
    asked = List.copyOf(asked);
  }
}
