package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.parameter.Parameters;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Every part of the estimator beside the same model written a second time, by another route: full
 * covariances, one for each number that may be odd or is left out. Everything is made anew for each
 * test.
 */
class ReferencePartsTest {

  /** Logs that far below the largest decide nothing. */
  private static final double DEPTH = 15;

  /** Tables of the curve, the assays and the normal stand between the two. */
  private static final double LOG = 2e-3;

  /** Limits go along two shared directions at most, of seven points each. */
  private static final double LOG_OF_LIMITS = 0.07;

  /** In days; the reference has a twelfth of a day for its step. */
  private static final double QUANTILE = 0.03;

  private final Model model = new Model(Parameters.load());
  private final Timeline timeline = Timeline.of(Parameters.load());
  private final List<ReferenceSeason> seasons = ReferenceSeason.all();

  private static Lattice days(ReferenceSeason season) {
    double[] peaks = season.part("peaks");
    return new Lattice((int) Math.round(peaks[0]), peaks.length, 1);
  }

  private static void same(String where, double[] ours, double[] reference, double tolerance) {
    assertThat(where, ours.length, is(reference.length));
    double most = Arrays.stream(reference).max().orElseThrow();
    for (int i = 0; i < ours.length; i++) {
      if (reference[i] > most - DEPTH) {
        assertThat(where + ", place " + i, ours[i], closeTo(reference[i], tolerance));
      }
    }
  }

  private static double[] logs(double[] likelihood) {
    return Arrays.stream(likelihood).map(Math::log).toArray();
  }

  @Test
  void thirtySeasons() {
    assertThat(seasons.size(), is(30));
  }

  @Test
  void thePriorOfThePeak() {
    for (ReferenceSeason season : seasons) {
      Lattice days = days(season);
      Lattice fine = new Lattice(days.first() * 8, days.count() * 8, 0.125);
      double[] density = model.onset.on(fine, season.evidence());
      double[] reference = season.part("prior");
      for (int i = 0; i < reference.length; i++) {
        assertThat(
            season + ", day " + i,
            density[8 * i],
            closeTo(reference[i], 1e-3 * reference[i] + 2e-5));
      }
    }
  }

  @Test
  void whatSpeaksOfThePeak() {
    for (ReferenceSeason season : seasons) {
      double[] ours = logs(new PeakEvidence(model, season.evidence()).on(days(season)));
      same(season.toString(), ours, season.part("side"), LOG);
    }
  }

  @Test
  void whatSpeaksOfOvulation() {
    for (ReferenceSeason season : seasons) {
      Lattice days = days(season);
      Lattice ovulations = new Lattice(days.first() + 2, days.count(), 1);
      double[] ours = logs(new OvulationEvidence(model, season.evidence()).on(ovulations));
      same(season.toString(), ours, season.part("seen"), LOG);
    }
  }

  @Test
  void whatIsSeenWithoutOvulation() {
    for (ReferenceSeason season : seasons) {
      double likelihood =
          new PeakEvidence(model, season.evidence()).withoutOvulation()
              * new OvulationEvidence(model, season.evidence()).withoutOvulation();
      assertThat(
          season.toString(),
          Math.log(likelihood),
          closeTo(season.part("without-ovulation")[0], 1e-5));
    }
  }

  private ProgesteroneLikelihood progesterone(ReferenceSeason season) {
    ProgesteroneLikelihood progesterone = new ProgesteroneLikelihood(model, season.evidence());
    progesterone.thorough(true);
    return progesterone;
  }

  @Test
  void allProgesteroneResultsTogether() {
    int tried = 0;
    for (ReferenceSeason season : seasons) {
      if (!season.has("all-none")) {
        continue;
      }
      double tolerance = season.evidence().intervals().isEmpty() ? LOG : LOG_OF_LIMITS;
      CourseWeights weights = CourseWeights.on(days(season), progesterone(season));
      same(season + ", ordinary", weights.ordinary().log(), season.part("all-ordinary"), tolerance);
      same(season + ", plateau", weights.plateau().log(), season.part("all-plateau"), tolerance);
      same(
          season + ", irregular",
          weights.irregular().log(),
          season.part("all-irregular"),
          tolerance);
      same(season + ", failing", weights.failing().log(), season.part("all-failing"), tolerance);
      ProgesteroneLikelihood progesterone = progesterone(season);
      Mixture none = progesterone.mixture();
      progesterone.silent(none);
      same(season + ", none", new double[] {none.log()}, season.part("all-none"), tolerance);
      tried++;
    }
    assertThat(tried, greaterThan(15));
  }

  /**
   * Leaving one out follows from the inverse covariance: exactly where all are numbers, and near
   * where it matters beside limits.
   */
  @Test
  void allProgesteroneResultsButOne() {
    int tried = 0;
    for (ReferenceSeason season : seasons) {
      if (!season.has("but-0-none")) {
        continue;
      }
      CourseWeights weights = CourseWeights.on(days(season), progesterone(season));
      ProgesteroneLikelihood progesterone = progesterone(season);
      Mixture none = progesterone.mixture();
      progesterone.silent(none);
      boolean limits = !season.evidence().intervals().isEmpty();
      for (int r = 0; r < progesterone.ids().size(); r++) {
        String but = "but-" + r;
        String where = season + ", " + but;
        double[] without = {none.logWithout(r)};
        near(where, weights.ordinary().but(r), season.part(but + "-ordinary"), limits);
        near(where, weights.plateau().but(r), season.part(but + "-plateau"), limits);
        near(where, weights.irregular().but(r), season.part(but + "-irregular"), limits);
        near(where, weights.failing().but(r), season.part(but + "-failing"), limits);
        near(where, without, season.part(but + "-none"), limits);
        tried++;
      }
    }
    assertThat(tried, greaterThan(60));
  }

  private static void near(String where, double[] ours, double[] reference, boolean limits) {
    if (!limits) {
      same(where, ours, reference, LOG);
      return;
    }
    double most = Arrays.stream(reference).max().orElseThrow();
    for (int i = 0; i < ours.length; i++) {
      if (reference[i] > most - 3) {
        assertThat(where + ", place " + i, ours[i], closeTo(reference[i], 0.8));
      }
    }
  }

  @Test
  void howOddANumberLooks() {
    int tried = 0;
    for (ReferenceSeason season : seasons) {
      if (!season.has("odd-0")) {
        continue;
      }
      double[] all = season.part("all-ordinary");
      double most = Arrays.stream(all).max().orElseThrow();
      CourseWeights weights = CourseWeights.on(days(season), progesterone(season));
      for (int j = 0; season.has("odd-" + j); j++) {
        double[] odd = season.part("odd-" + j);
        for (int i = 0; i < odd.length; i++) {
          if (all[i] > most - DEPTH) {
            assertThat(
                season + ", number " + j + ", place " + i,
                weights.ordinary().odd()[j][i],
                closeTo(Math.exp(odd[i] - all[i]), 1e-3));
          }
        }
        tried++;
      }
    }
    assertThat(tried, greaterThan(15));
  }

  @Test
  void thePosterior() {
    double[] shares = {0.05, 0.25, 0.5, 0.75, 0.95};
    for (ReferenceSeason season : seasons) {
      Estimate estimate = timeline.estimate(season.evidence());
      double[] courses = season.part("courses");
      Estimate.Courses ours = estimate.courses();
      assertThat(season.toString(), ours.ordinary(), closeTo(courses[0], 0.002));
      assertThat(season.toString(), ours.plateau(), closeTo(courses[1], 0.002));
      assertThat(season.toString(), ours.irregular(), closeTo(courses[2], 0.002));
      assertThat(season.toString(), ours.failing(), closeTo(courses[3], 0.002));
      assertThat(season.toString(), ours.brokenOff(), closeTo(courses[4], 0.001));
      assertThat(season.toString(), ours.silent(), closeTo(courses[5], 0.001));
      assertThat(season.toString(), estimate.fit(), closeTo(season.part("fit")[0], 0.01));
      for (int q = 0; q < shares.length; q++) {
        // there the prior is cut off with weight still in it, where the two cut differently
        double tolerance = season.toString().startsWith("17-flat") ? 0.06 : QUANTILE;
        String where = season + ", share " + shares[q];
        assertThat(
            where,
            estimate.peak().quantile(shares[q]),
            closeTo(season.part("lhPeak")[q], tolerance));
        assertThat(
            where,
            estimate.ovulation().quantile(shares[q]),
            closeTo(season.part("ovulation")[q], tolerance));
      }
    }
  }

  /**
   * What an observation is said to do is what leaving it out does in the reference: the median
   * within an hour or one part in a hundred of the 90 % interval left, the width within four hours
   * or two parts.
   */
  @Test
  void whatEachObservationDoes() {
    int tried = 0;
    for (ReferenceSeason season : seasons) {
      Estimate with = timeline.estimate(season.evidence());
      double median = with.ovulation().quantile(0.5);
      double width = with.ovulation().quantile(0.95) - with.ovulation().quantile(0.05);
      for (int i = 0; i < with.influences().size(); i++) {
        Estimate.Pull pull = with.influences().get(i);
        double[] left = season.part("without-" + i);
        double leftWidth = left[2] - left[0];
        double allowed = Math.max(1 / 24.0, 0.01 * leftWidth);
        String where = season + ", " + pull.observation();
        assertThat(where, median - pull.medianShift(), closeTo(left[1], allowed));
        double allowedWidth = Math.max(4 / 24.0, 0.02 * leftWidth);
        assertThat(where, width - pull.widthChange(), closeTo(leftWidth, allowedWidth));
        tried++;
      }
    }
    assertThat(tried, greaterThan(100));
  }
}
