package io.github.tiderule.cases.plans;

import java.util.List;

/**
 * A dose given.
 *
 * @param day time, in days on the season's calendar
 * @param ageHours age of chilled semen then
 */
public record Given(double day, double ageHours) {

  /**
   * How a season was bred.
   *
   * @param doses in time order; none where she was not bred
   * @param tests how many times she was tested until the plan was committed to
   * @param alsoLh how often blood drawn for progesterone was tested for LH too
   */
  record Season(List<Given> doses, int tests, int alsoLh) {

    Season {
      doses = List.copyOf(doses);
    }
  }
}
