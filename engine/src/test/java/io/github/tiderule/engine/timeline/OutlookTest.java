package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;

import org.junit.jupiter.api.Test;

/** Chances of results by ovulation, worked by hand. */
class OutlookTest {

  @Test
  void betweenTimesTheChanceGoesInAStraightLine() {
    Lattice lattice = new Lattice(8, 3, 0.5);
    double[] values = {0.2, 0.6, 1.0};
    assertThat(Outlook.in(lattice, values, 4), is(0.2));
    assertThat(Outlook.in(lattice, values, 4.125), closeTo(0.3, 1e-12));
    assertThat(Outlook.in(lattice, values, 4.75), closeTo(0.8, 1e-12));
    assertThat(Outlook.in(lattice, values, 5), is(1.0));
    assertThat("before, the first holds", Outlook.in(lattice, values, 1), is(0.2));
    assertThat("after, the last holds", Outlook.in(lattice, values, 9), is(1.0));
  }

  /** Peaks at 10 and 11, ovulation the same day or the next with one and two thirds. */
  @Test
  void theMeanIsOverThePeaksThatLeadToAnOvulation() {
    Lattice peaks = new Lattice(10, 2, 1);
    double[] lag = {1 / 3.0, 2 / 3.0};
    double[][] value = {{0.9, 0.3}, {0.1, 0.7}};
    Outlook outlook = Outlook.over(peaks, lag, new double[] {0.6, 0.4}, value);
    assertThat(outlook.results(), is(2));
    assertThat(outlook.chance(0, 10), closeTo(0.9, 1e-12));
    // day 11 follows peak 10 with 0.6 × 2/3 and peak 11 with 0.4 × 1/3
    assertThat(
        outlook.chance(0, 11), closeTo((0.4 * 0.9 + 0.4 / 3 * 0.3) / (0.4 + 0.4 / 3), 1e-12));
    assertThat(
        outlook.chance(1, 11), closeTo((0.4 * 0.1 + 0.4 / 3 * 0.7) / (0.4 + 0.4 / 3), 1e-12));
    assertThat(outlook.chance(0, 12), closeTo(0.3, 1e-12));
  }

  @Test
  void whereNoPeakLeadsTheNearestChanceHolds() {
    Lattice peaks = new Lattice(0, 5, 1);
    double[][] value = {{0.5, 0.8, 0.1, 0.4, 0.5}, {0.5, 0.2, 0.9, 0.6, 0.5}};
    Outlook outlook = Outlook.over(peaks, new double[] {0, 1}, new double[] {0, 1, 0, 2, 0}, value);
    assertThat(outlook.chance(0, 0), closeTo(0.8, 1e-12));
    assertThat(outlook.chance(0, 1), closeTo(0.8, 1e-12));
    assertThat(outlook.chance(0, 2), closeTo(0.8, 1e-12));
    assertThat("nothing leads to day 3: all results alike", outlook.chance(0, 3), is(0.5));
    assertThat(outlook.chance(0, 4), closeTo(0.4, 1e-12));
    assertThat(outlook.chance(1, 5), closeTo(0.6, 1e-12));
  }
}
