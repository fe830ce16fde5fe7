package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import org.junit.jupiter.api.Test;

/** Seasons that leave the textbook, each beside an ordinary twin. Day 1 is first blood, at noon. */
class UnusualCoursesTest {

  private static final Timeline TIMELINE = Timeline.of(Parameters.load());
  private static final Series LABORATORY = Series.of("A", Method.UNKNOWN);

  /** Values at eight in the morning: day, value, day, value … */
  private static PlainEvidence values(double... dayAndValue) {
    return values(LABORATORY, dayAndValue);
  }

  private static PlainEvidence values(Series series, double... dayAndValue) {
    PlainEvidence evidence = new PlainEvidence();
    for (int i = 0; i < dayAndValue.length; i += 2) {
      evidence.value(series, dayAndValue[i] - 1 + 8 / 24.0, dayAndValue[i + 1]);
    }
    return evidence;
  }

  private static Estimate estimate(PlainEvidence evidence) {
    return TIMELINE.estimate(evidence.evidence());
  }

  private static Estimate estimate(double... dayAndValue) {
    return estimate(values(dayAndValue));
  }

  /** A quantile of ovulation, as the day of the season. */
  private static double day(Estimate estimate, double share) {
    return estimate.ovulation().quantile(share) + 1;
  }

  private static double width(Estimate estimate) {
    return day(estimate, 0.95) - day(estimate, 0.05);
  }

  private static double odd(Estimate estimate, int number) {
    return estimate.influences().get(number).odd();
  }

  /** Probability that she ovulates after a day of the season. */
  private static double after(Estimate estimate, double day) {
    return (1 - estimate.ovulation().cdf(day - 1)) * (1 - estimate.noOvulation());
  }

  @Test
  void standingStillAtTheLevelOfOvulationDatesNothing() {
    Estimate still = estimate(9, 2.4, 11, 4.6, 13, 4.9, 15, 5.1, 18, 4.7);
    assertThat(width(still), greaterThan(8.0));
    assertThat(after(still, 18.5), greaterThan(0.25));
    assertThat(still.courses().plateau(), greaterThan(still.courses().ordinary()));
    assertThat(still.fit(), greaterThan(0.1));
    Estimate rising = estimate(9, 2.4, 11, 4.6, 13, 9.8, 15, 15, 18, 22);
    assertThat(width(rising), lessThan(4.5));
    assertThat(day(rising, 0.5), closeTo(11, 1));
    assertThat(rising.courses().ordinary(), greaterThan(0.85));
  }

  /** By the method of which one way reads half: still wide enough to leave the rest of it open. */
  @Test
  void standingStillIsNotNarrowWhereTheMethodMayReadLow() {
    Series laboratory = Series.of("A", Method.CLIA);
    Estimate still = estimate(values(laboratory, 9, 2.4, 11, 4.6, 13, 4.9, 15, 5.1, 18, 4.7));
    assertThat(width(still), greaterThan(8.0));
    assertThat(after(still, 18), greaterThan(0.1));
  }

  @Test
  void theRiseAfterALongRestDatesOvulation() {
    Estimate rise = estimate(9, 2.4, 11, 4.6, 13, 4.9, 15, 5.1, 18, 4.7, 20, 7.4, 21, 11.6);
    assertThat(day(rise, 0.5), closeTo(19, 0.75));
    assertThat(day(rise, 0.25), greaterThan(17.5));
    assertThat(rise.plateau(), greaterThan(0.75));
  }

  @Test
  void aRestAtALowLevelPutsOvulationOff() {
    Estimate rest = estimate(6, 1.9, 8, 2.2, 10, 2.1, 14, 2.4);
    assertThat(day(rest, 0.05), greaterThan(12.5));
    assertThat(rest.plateau(), greaterThan(2 * rest.courses().ordinary()));
    Estimate rise = estimate(6, 1.9, 8, 2.2, 10, 2.1, 14, 2.4, 16, 3.6, 17, 5.5);
    assertThat(day(rise, 0.5), closeTo(17, 0.75));
    assertThat(rise.plateau(), greaterThan(0.75));
    Estimate usual = estimate(6, 0.6, 8, 0.9, 10, 2.1, 11, 3.6, 12, 5.5);
    assertThat(usual.plateau(), lessThan(0.05));
  }

  @Test
  void aSlowRiseIsStillComing() {
    Estimate slow = estimate(11, 0.7, 14, 0.9, 17, 1.3, 20, 1.8);
    assertThat(day(slow, 0.25), greaterThan(20.5));
    assertThat(slow.noOvulation(), lessThan(0.4));
  }

  @Test
  void aFallByAThirdWidens() {
    Estimate before = estimate(9, 1.4, 11, 3.1);
    Estimate fallen = estimate(9, 1.4, 11, 3.1, 13, 2.0);
    Estimate risen = estimate(9, 1.4, 11, 3.1, 13, 6.5);
    assertThat(width(fallen), greaterThan(1.5 * width(before)));
    assertThat(width(risen), lessThan(width(before)));
    assertThat(fallen.courses().brokenOff(), greaterThan(0.1));
    assertThat(risen.courses().brokenOff(), lessThan(0.02));
    assertThat(fallen.fit(), lessThan(risen.fit()));
  }

  @Test
  void aFallAfterASteepRiseFitsNothing() {
    Estimate fallen = estimate(9, 2.2, 11, 5.9, 13, 11.5, 14, 7.4);
    assertThat(fallen.fit(), lessThan(0.1));
    Estimate risen = estimate(9, 2.2, 11, 5.9, 13, 11.5, 14, 14.5);
    assertThat(risen.fit(), greaterThan(0.3));
  }

  @Test
  void aFallLongAfterOvulationDoesNotUndateIt() {
    Estimate failing = estimate(6, 0.6, 8, 2.1, 10, 6.5, 12, 12, 18, 3.4);
    assertThat(day(failing, 0.5), closeTo(10, 0.75));
    assertThat(width(failing), lessThan(4.0));
    assertThat(failing.courses().failing(), greaterThan(0.1));
    assertThat(failing.noOvulation(), lessThan(0.05));
    Estimate usual = estimate(6, 0.6, 8, 2.1, 10, 6.5, 12, 12, 18, 24);
    assertThat(usual.courses().failing(), lessThan(0.03));
  }

  @Test
  void aLevelBackAtBaseSpeaksOfNoOvulation() {
    Estimate broken = estimate(8, 1.2, 11, 6.0, 18, 0.9);
    assertThat(broken.noOvulation(), greaterThan(0.5));
    assertThat(broken.courses().brokenOff(), greaterThan(broken.courses().silent()));
    Estimate usual = estimate(8, 1.2, 11, 6.0, 18, 19);
    assertThat(usual.noOvulation(), lessThan(0.01));
  }

  /** A number near nothing, a number of nothing and a limit are odd in the same way. */
  @Test
  void nothingAfterARiseIsOdd() {
    double[][] nothing = {{7, 1.1, 9, 2, 10, 3.8, 11, 0}, {7, 1.1, 9, 2, 10, 3.8, 11, 0.2}};
    double rise = day(estimate(7, 1.1, 9, 2, 10, 3.8), 0.5);
    for (double[] values : nothing) {
      Estimate estimate = estimate(values);
      assertThat(odd(estimate, 3), greaterThan(0.9));
      assertThat(odd(estimate, 2), lessThan(0.1));
      assertThat(day(estimate, 0.5), closeTo(rise, 0.75));
    }
    Estimate limit = estimate(values(7, 1.1, 9, 2, 10, 3.8).below(LABORATORY, 10 + 8 / 24.0, 0.5));
    assertThat(odd(limit, 3), greaterThan(0.9));
    assertThat(day(limit, 0.5), closeTo(rise, 0.75));
    Estimate early = estimate(values(7, 1.1, 9, 2, 10, 3.8).below(LABORATORY, 3, 0.5));
    assertThat(odd(early, 3), lessThan(0.05));
  }

  @Test
  void twoOddValuesAreBothNamed() {
    Estimate right = estimate(6, 0.6, 8, 0.8, 10, 1.9, 11, 3.4, 13, 8.0, 15, 14);
    Estimate slips = estimate(6, 0.6, 8, 0.8, 10, 1.9, 11, 3.4, 12, 0.5, 13, 8.0, 14, 2.0, 15, 14);
    assertThat(odd(slips, 4), greaterThan(0.95));
    assertThat(odd(slips, 6), greaterThan(0.95));
    assertThat(odd(slips, 5), lessThan(0.05));
    assertThat(day(slips, 0.5), closeTo(day(right, 0.5), 0.5));
    assertThat(slips.fit(), lessThan(0.01));
    assertThat(right.fit(), greaterThan(0.3));
  }

  @Test
  void aSeasonThatStaysLowMayBreakOff() {
    Estimate low = estimate(6, 0.5, 9, 0.7, 12, 0.8, 16, 0.6, 20, 0.5);
    assertThat(low.noOvulation(), greaterThan(0.4));
    assertThat(day(low, 0.05), greaterThan(21.0));
    Estimate usual = estimate(6, 0.5, 9, 0.7);
    assertThat(usual.noOvulation(), lessThan(0.1));
  }

  /** What the courses weigh sums to one, whatever they are. */
  @Test
  void coursesSumToOne() {
    for (int seed = 1; seed <= 20; seed++) {
      Estimate.Courses courses = TIMELINE.estimate(VariedEvidence.of(seed)).courses();
      double sum =
          courses.ordinary()
              + courses.plateau()
              + courses.irregular()
              + courses.failing()
              + courses.brokenOff()
              + courses.silent();
      assertThat("seed " + seed, sum, closeTo(1, 1e-9));
    }
  }
}
