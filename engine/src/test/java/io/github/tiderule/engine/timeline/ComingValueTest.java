package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** A number to come beside sums over every LH peak and every value it may have. */
class ComingValueTest {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
  private static final Series RIA = Series.of("A", Method.RIA);

  /** Between two logs of a number. */
  private static final double STEP = 0.09;

  private static final double[] EDGES = {0.8, 1.6, 3, 6, 12};

  private final Model model = new Model(Parameters.load());
  private final Timeline timeline = Timeline.of(Parameters.load());

  /**
   * Of a bitch of whom the LH peak alone is known, the log of a number is normal about the curve at
   * her speed, by her own base and rise, the laboratory, swing, drift and the number's own error;
   * and wider where it is odd.
   */
  @Test
  void afterAKnownPeakItLiesAboutTheCurve() {
    for (double day : new double[] {-6, -1, 2, 5.5, 10}) {
      ComingValue value = timeline.afterPeak(RIA, day);
      for (double ngPerMl : new double[] {0.3, 0.6, 1.5, 4, 9, 25}) {
        double expected = belowAfterPeak(day, ngPerMl);
        assertThat("day " + day, value.below(ngPerMl), closeTo(expected, 2e-3));
      }
      for (double share : new double[] {0.05, 0.5, 0.95}) {
        assertThat(value.below(value.quantile(share)), closeTo(share, 2e-4));
      }
    }
  }

  private double belowAfterPeak(double day, double ngPerMl) {
    double cv = 0.08;
    double weights = 0;
    double below = 0;
    double mean = 0;
    double square = 0;
    double guess = Math.exp(model.curve.logMean(day));
    double wider = model.wideRateSd / model.rateSd;
    for (double z = -3.7; z <= 3.701; z += 0.1) {
      double rate = Math.exp(model.rateSd * z);
      double speed = day < model.ratePivot ? rate : model.rateAfter(rate);
      double onCurve = model.ratePivot + speed * (day - model.ratePivot);
      double log = model.curve.logMean(onCurve);
      double base = Math.min(1, model.value("level.basal") * Math.exp(-log));
      double luteal = 1 + model.lutealGrowth * Math.min(Math.max((onCurve - 4) / 4, 0), 1);
      double variance =
          Math.pow(base * model.baselineSd, 2)
              + Math.pow((1 - base) * luteal * model.riseSd, 2)
              + Math.pow(model.assays(Method.RIA).get(0).scaleLogSd(), 2)
              + Math.pow(model.swingSd, 2)
              + Math.pow(model.driftSd, 2)
              + Math.pow(model.pulseSd, 2)
              + cv * cv
              + Math.pow(model.assayFloor / guess, 2);
      double weight =
          ((1 - model.wideRateWeight) * STANDARD.density(z)
              + model.wideRateWeight * STANDARD.density(z / wider) / wider);
      weights += weight;
      below +=
          weight * STANDARD.cumulativeProbability((Math.log(ngPerMl) - log) / Math.sqrt(variance));
      mean += weight * log;
      square += weight * (log * log + variance);
    }
    mean /= weights;
    double wide = Math.sqrt(square / weights - mean * mean + model.oddSd * model.oddSd);
    return (1 - model.oddWeight) * below / weights
        + model.oddWeight * STANDARD.cumulativeProbability((Math.log(ngPerMl) - mean) / wide);
  }

  @Test
  void afterAKnownPeakNoNumberMovesOvulation() {
    ComingValue value = timeline.afterPeak(RIA, 3);
    double[] lag = new Lag(model).kernel(0.5);
    double[] days = value.ovulations();
    assertThat(days.length, is(lag.length));
    double[] before = value.before();
    double[] after = value.after(2);
    Outlook outlook = value.between(EDGES);
    Outlook both = value.betweenWithLh(EDGES);
    double positive = new PeakEvidence(model, Evidence.NOTHING).positive(3);
    assertThat(outlook.results(), is(EDGES.length + 1));
    assertThat(both.results(), is(2 * EDGES.length + 2));
    for (int i = 0; i < lag.length; i++) {
      assertThat(days[i], is(0.5 * i));
      assertThat(before[i], closeTo(lag[i], 1e-12));
      assertThat(after[i], closeTo(lag[i], 1e-12));
      double last = 0;
      for (int c = 0; c <= EDGES.length; c++) {
        double now = c < EDGES.length ? value.below(EDGES[c]) : 1;
        assertThat(outlook.chance(c, days[i]), closeTo(now - last, 1e-9));
        assertThat(
            both.chance(EDGES.length + 1 + c, days[i]), closeTo(positive * (now - last), 1e-9));
        assertThat(both.chance(c, days[i]), closeTo((1 - positive) * (now - last), 1e-9));
        last = now;
      }
    }
  }

  /** All peaks by all values, as {@link PlainValues} weighs them. */
  private final class Table {

    final Lattice peaks;
    final double[] logs = new double[81];
    final double[][] density;
    final double[] mass;
    final double[] lag = new Lag(model).kernel(0.5);
    final double[] ovulated;

    /** The last number of the evidence is the one to come. */
    Table(Evidence evidence, Lattice peaks) {
      this.peaks = peaks;
      density = new double[peaks.count()][logs.length];
      mass = new double[peaks.count()];
      PlainValues plain = new PlainValues(model, evidence, model.plateaus);
      int coming = evidence.values().size() - 1;
      double[] prior = model.onset.on(peaks, evidence);
      double[] side = new PeakEvidence(model, evidence).on(peaks);
      ovulated =
          new OvulationEvidence(model, evidence)
              .on(new Lattice(peaks.first(), peaks.count() + lag.length - 1, 0.5));
      for (int x = 0; x < logs.length; x++) {
        logs[x] = -2.4 + STEP * x;
      }
      double usual = 1 - model.plateauWeight - model.noOvulationWeight - model.brokenOffWeight;
      for (int i = 0; i < mass.length; i++) {
        density[i] = plain.density(peaks.at(i), coming, logs, usual, model.plateauWeight, 0, 0);
        double whole = 0;
        double mean = 0;
        double square = 0;
        for (int x = 0; x < logs.length; x++) {
          double one = density[i][x];
          whole += one * STEP;
          mean += one * STEP * logs[x];
          square += one * STEP * logs[x] * logs[x];
        }
        mean /= whole;
        double wide = Math.sqrt(square / whole - mean * mean + model.oddSd * model.oddSd);
        double weight = prior[i] * side[i];
        mass[i] = weight * whole;
        for (int x = 0; x < logs.length; x++) {
          double odd = STANDARD.density((logs[x] - mean) / wide) / wide;
          density[i][x] =
              weight * ((1 - model.oddWeight) * density[i][x] + model.oddWeight * whole * odd);
        }
      }
    }

    /** Chance of each ovulation, of peaks so weighed. */
    double[] ovulations(double[] weight) {
      double[] sum = new double[ovulated.length];
      double total = 0;
      for (int i = 0; i < mass.length; i++) {
        for (int l = 0; l < lag.length; l++) {
          double part = weight[i] * lag[l] * ovulated[i + l];
          sum[i + l] += part;
          total += part;
        }
      }
      for (int j = 0; j < sum.length; j++) {
        sum[j] /= total;
      }
      return sum;
    }

    double below(double log) {
      double sum = 0;
      double total = 0;
      for (int i = 0; i < mass.length; i++) {
        double seen = 0;
        for (int l = 0; l < lag.length; l++) {
          seen += lag[l] * ovulated[i + l];
        }
        for (int x = 0; x < logs.length; x++) {
          total += seen * density[i][x];
          // half of what lies at the edge itself
          double part = Math.min(Math.max((log - logs[x]) / STEP + 0.5, 0), 1);
          sum += part * seen * density[i][x];
        }
      }
      return sum / total;
    }

    /** Chance of a number between two, by ovulation. */
    double between(double low, double high, double ovulation) {
      double sum = 0;
      double total = 0;
      for (int i = 0; i < mass.length; i++) {
        int l = (int) Math.round(ovulation / 0.5) - peaks.first() - i;
        for (int x = 0; l >= 0 && l < lag.length && x < logs.length; x++) {
          double part =
              Math.min(Math.max((high - logs[x]) / STEP + 0.5, 0), 1)
                  - Math.min(Math.max((low - logs[x]) / STEP + 0.5, 0), 1);
          total += lag[l] * density[i][x];
          sum += part * lag[l] * density[i][x];
        }
      }
      return sum / total;
    }

    /** Density of the number by peak. */
    double[] at(double log) {
      double place = (log - logs[0]) / STEP;
      int x = (int) place;
      double[] weight = new double[mass.length];
      for (int i = 0; i < mass.length; i++) {
        weight[i] = density[i][x] + (place - x) * (density[i][x + 1] - density[i][x]);
      }
      return weight;
    }
  }

  private void compare(PlainEvidence season, double day, Lattice peaks) {
    Evidence evidence = season.evidence();
    Estimate known = timeline.estimate(evidence);
    ComingValue coming = timeline.foresight(evidence, known).value(RIA, day);
    double guess = Math.exp(model.curve.logMean(day - known.peak().quantile(0.5)));
    Evidence all = evidence.with(new Evidence.Value("", day, guess, RIA, false, false));
    Table table = new Table(all, peaks);
    Outlook outlook = coming.between(EDGES);
    double last = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < EDGES.length; c++) {
      double log = Math.log(EDGES[c]);
      assertThat("below " + EDGES[c], coming.below(EDGES[c]), closeTo(table.below(log), 0.005));
      for (double share : new double[] {0.1, 0.5, 0.9}) {
        double ovulation = 0.5 * Math.rint(2 * known.ovulation().quantile(share));
        assertThat(
            "below " + EDGES[c] + ", ovulation " + ovulation,
            outlook.chance(c, ovulation),
            closeTo(table.between(last, log, ovulation), 0.01));
      }
      last = log;
    }
    same(coming, coming.before(), peaks.first(), table.ovulations(table.mass));
    for (double share : new double[] {0.1, 0.5, 0.9}) {
      double ngPerMl = coming.quantile(share);
      assertThat(table.below(Math.log(ngPerMl)), closeTo(share, 0.005));
      same(
          coming,
          coming.after(ngPerMl),
          peaks.first(),
          table.ovulations(table.at(Math.log(ngPerMl))));
    }
  }

  private static void same(ComingValue coming, double[] chance, int first, double[] plain) {
    double[] days = coming.ovulations();
    assertThat(days[1] - days[0], closeTo(0.5, 1e-12));
    double sum = 0;
    double mean = 0;
    for (int i = 0; i < days.length; i++) {
      sum += chance[i];
      mean += chance[i] * days[i];
    }
    double plainMean = 0;
    for (int j = 0; j < plain.length; j++) {
      double day = 0.5 * (first + j);
      plainMean += plain[j] * day;
      int place = (int) Math.round((day - days[0]) / 0.5);
      double here = place >= 0 && place < chance.length ? chance[place] : 0;
      assertThat("ovulation on " + day, here, closeTo(plain[j], 0.003));
    }
    assertThat(sum, closeTo(1, 1e-12));
    assertThat(mean, closeTo(plainMean, 0.06));
  }

  private static PlainEvidence rising() {
    return new PlainEvidence().value(RIA, 6.35, 0.6).value(RIA, 8.35, 1.1);
  }

  @Test
  void inARiseItIsForeseenFromAllPeaks() {
    compare(rising(), 10.35, new Lattice(10, 30, 0.5));
  }

  @Test
  void whatSpeaksOfOvulationCounts() {
    compare(rising().scan(12.3, false).smear(10.3, 92.0, null), 11.35, new Lattice(14, 22, 0.5));
  }

  @Test
  void withNothingKnownButFirstBlood() {
    compare(new PlainEvidence(), 9.4, new Lattice(-8, 98, 0.5));
  }

  /** Edges of an LH surge are sharper than half a day, so finer steps are taken. */
  @Test
  void besideAnLhTest() {
    Evidence evidence = rising().lh(9.4, false).evidence();
    Estimate known = timeline.estimate(evidence);
    ComingValue coming = timeline.foresight(evidence, known).value(RIA, 10.35);
    double[] days = coming.ovulations();
    assertThat(days[1] - days[0], closeTo(0.25, 1e-12));
    double mean = 0;
    double[] before = coming.before();
    for (int i = 0; i < days.length; i++) {
      mean += before[i] * days[i];
    }
    double expected = 0;
    double whole = 0;
    Density ovulation = known.ovulation();
    for (int i = 0; i < ovulation.size(); i++) {
      expected += ovulation.value(i) * ovulation.at(i);
      whole += ovulation.value(i);
    }
    assertThat(mean, closeTo(expected / whole, 0.05));
  }

  /** The one number known, left out: as if it had never been drawn. */
  @Test
  void aKnownNumberIsForeseenFromTheRest() {
    Evidence evidence = rising().value(RIA, 10.35, 2.6).evidence();
    Estimate known = timeline.estimate(evidence);
    ComingValue again = timeline.foresight(evidence, known).again("v2");
    Evidence rest = rising().evidence();
    ComingValue first = timeline.foresight(rest, timeline.estimate(rest)).value(RIA, 10.35);
    for (double ngPerMl : EDGES) {
      assertThat(again.below(ngPerMl), closeTo(first.below(ngPerMl), 0.01));
    }
    org.junit.jupiter.api.Assertions.assertThrows(
        IllegalArgumentException.class, () -> timeline.foresight(evidence, known).again("x"));
  }
}
