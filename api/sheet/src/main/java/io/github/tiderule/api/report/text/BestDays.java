package io.github.tiderule.api.report.text;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import java.util.Comparator;
import java.util.List;

/** The days of an answer that are worth showing beside each other, in the order of dates. */
public final class BestDays {

  /** As many as stand in a picture. */
  public static final int MOST = 10;

  private BestDays() {}

  /** The days of the highest ranks, as many as there is room for. */
  public static List<BreedingDay> of(Advice advice, int most) {
    return advice.breeding().days().stream()
        .limit(most)
        .sorted(Comparator.comparing(BreedingDay::day))
        .toList();
  }

  /** Whether the plan breeds on a day, in its clock window. */
  public static boolean isPlanned(Advice advice, BreedingDay day) {
    Plan plan = advice.breeding().plan();
    return plan != null
        && plan.at().stream().anyMatch(at -> !at.isBefore(day.from()) && !at.isAfter(day.to()));
  }
}
