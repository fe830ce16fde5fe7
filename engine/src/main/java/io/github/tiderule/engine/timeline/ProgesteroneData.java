package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Series;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * All progesterone results of a season, numbers first, then limits and bands, with everything about
 * their errors that does not depend on where the LH peak lies.
 */
final class ProgesteroneData {

  private final List<String> ids;
  private final double[] day;
  private final double[] log;
  private final double[] logLow;
  private final double[] logHigh;
  private final List<Reading> readings;
  private final List<Reading> irregular;

  private ProgesteroneData(
      List<String> ids,
      double[] day,
      double[] log,
      double[] logLow,
      double[] logHigh,
      List<Reading> readings,
      List<Reading> irregular) {
    this.ids = ids;
    this.day = day;
    this.log = log;
    this.logLow = logLow;
    this.logHigh = logHigh;
    this.readings = readings;
    this.irregular = irregular;
  }

  /**
   * One way the laboratories may all read: one assay for each result.
   *
   * @param precision inverse covariance of the numbers' errors: swing, drift, assay, handling,
   *     scale
   * @param logDeterminant of that covariance
   * @param scale covariance of limits and bands with every result through a shared scale
   * @param noise own error variance of each limit or band
   * @param shift log bias of each result by handling, and the log factor of a proportional assay
   */
  record Reading(
      double logWeight,
      Assay[] assay,
      double[][] precision,
      double logDeterminant,
      double[][] scale,
      double[] noise,
      double[] shift) {}

  static ProgesteroneData of(Model model, Evidence evidence) {
    List<Evidence.Value> values =
        evidence.values().stream().filter(one -> one.ngPerMl() >= model.assayLeast).toList();
    List<Evidence.Interval> intervals = new ArrayList<>(evidence.intervals());
    for (Evidence.Value one : evidence.values()) {
      if (one.ngPerMl() < model.assayLeast) {
        intervals.add(tooLow(one, model.assayLeast));
      }
    }
    int n = values.size();
    int k = intervals.size();
    List<String> ids = new ArrayList<>();
    List<Series> series = new ArrayList<>();
    List<Boolean> kit = new ArrayList<>();
    double[] day = new double[n + k];
    double[] log = new double[n];
    double[] logLow = new double[k];
    double[] logHigh = new double[k];
    for (int i = 0; i < n; i++) {
      Evidence.Value value = values.get(i);
      ids.add(value.id());
      series.add(value.series());
      kit.add(false);
      day[i] = value.day();
      log[i] = Math.log(value.ngPerMl());
    }
    for (int q = 0; q < k; q++) {
      Evidence.Interval interval = intervals.get(q);
      ids.add(interval.id());
      series.add(interval.series());
      kit.add(interval.kit());
      day[n + q] = interval.day();
      logLow[q] = Math.log(interval.low());
      logHigh[q] = Math.log(interval.high());
    }
    List<Reading> readings = new ArrayList<>();
    List<Reading> irregular = new ArrayList<>();
    Drift usual = new Drift(model.driftSd, model.driftDays);
    Drift wild = new Drift(model.irregularSd, model.irregularDays);
    for (Map<Series, Assay> choice : choices(model, series)) {
      readings.add(reading(model, usual, values, intervals, series, kit, choice));
      irregular.add(reading(model, wild, values, intervals, series, kit, choice));
    }
    return new ProgesteroneData(List.copyOf(ids), day, log, logLow, logHigh, readings, irregular);
  }

  /** How far her own course departs from the common shape, and for how long. */
  private record Drift(double sd, double days) {}

  /** A number too low to say more than that it lies below a level. */
  private static Evidence.Interval tooLow(Evidence.Value value, double below) {
    return new Evidence.Interval(
        value.id(), value.day(), 0, below, value.series(), value.readsLow(), value.noisy(), false);
  }

  /** Every combination of one way to read for each series. */
  private static List<Map<Series, Assay>> choices(Model model, List<Series> series) {
    SortedMap<Series, List<Assay>> ways = new TreeMap<>();
    series.forEach(one -> ways.put(one, model.assays(one.method())));
    List<Map<Series, Assay>> choices = new ArrayList<>();
    choices.add(new LinkedHashMap<>());
    for (Map.Entry<Series, List<Assay>> entry : ways.entrySet()) {
      List<Map<Series, Assay>> longer = new ArrayList<>();
      for (Map<Series, Assay> choice : choices) {
        for (Assay assay : entry.getValue()) {
          Map<Series, Assay> more = new LinkedHashMap<>(choice);
          more.put(entry.getKey(), assay);
          longer.add(more);
        }
      }
      choices = longer;
    }
    return choices;
  }

  private static Reading reading(
      Model model,
      Drift drift,
      List<Evidence.Value> values,
      List<Evidence.Interval> intervals,
      List<Series> series,
      List<Boolean> kit,
      Map<Series, Assay> choice) {
    int n = values.size();
    int k = intervals.size();
    Assay[] assay = new Assay[n + k];
    double[] shift = new double[n + k];
    double[] scaleSd = new double[n + k];
    for (int i = 0; i < n + k; i++) {
      assay[i] = java.util.Objects.requireNonNull(choice.get(series.get(i)));
      boolean low = i < n ? values.get(i).readsLow() : intervals.get(i - n).readsLow();
      shift[i] =
          (low ? model.handlingBias : 0) + (assay[i].proportional() ? assay[i].logSlope() : 0);
      scaleSd[i] = assay[i].scaleLogSd();
    }
    double[][] covariance = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double apart = Math.abs(values.get(i).day() - values.get(j).day());
        covariance[i][j] =
            sq(model.swingSd) * Math.exp(-apart / model.swingDays)
                + sq(drift.sd()) * Math.exp(-0.5 * sq(apart / drift.days()));
        if (series.get(i).equals(series.get(j))) {
          covariance[i][j] += sq(scaleSd[i]);
        }
      }
      Evidence.Value value = values.get(i);
      covariance[i][i] +=
          ownVariance(model, assay[i], value.ngPerMl(), value.readsLow(), value.noisy());
    }
    double[][] scale = new double[k][n + k];
    double[] noise = new double[k];
    for (int q = 0; q < k; q++) {
      Evidence.Interval interval = intervals.get(q);
      for (int i = 0; i < n + k; i++) {
        boolean shared =
            series.get(n + q).equals(series.get(i)) && kit.get(n + q).equals(kit.get(i));
        scale[q][i] = shared ? sq(scaleSd[i]) : 0;
      }
      double edge = interval.low() > 0 ? interval.low() : interval.high();
      noise[q] =
          sq(model.swingSd)
              + sq(drift.sd())
              + ownVariance(model, assay[n + q], edge, interval.readsLow(), interval.noisy())
              + (interval.kit() ? sq(model.kitSd) : 0);
    }
    Cholesky cholesky = Cholesky.of(covariance);
    double weight = 1;
    for (Assay one : choice.values()) {
      weight *= one.weight();
    }
    return new Reading(
        Math.log(weight),
        assay,
        cholesky.inverse(),
        cholesky.logDeterminant(),
        scale,
        noise,
        shift);
  }

  private static double ownVariance(
      Model model, Assay assay, double ngPerMl, boolean readsLow, boolean noisy) {
    double floor = model.assayFloor / Math.max(ngPerMl, model.assayFloor);
    return sq(model.pulseSd)
        + sq(assay.cvAt(ngPerMl))
        + sq(floor)
        + (readsLow ? sq(model.handlingSd) : 0)
        + (noisy ? sq(model.noisySd) : 0);
  }

  private static double sq(double x) {
    return x * x;
  }

  List<String> ids() {
    return ids;
  }

  /** How many results there are. */
  int count() {
    return day.length;
  }

  /** How many of them are numbers. */
  int values() {
    return log.length;
  }

  double day(int i) {
    return day[i];
  }

  double log(int i) {
    return log[i];
  }

  double logLow(int q) {
    return logLow[q];
  }

  double logHigh(int q) {
    return logHigh[q];
  }

  /** Every way the laboratories may read. */
  List<Reading> readings() {
    return readings;
  }

  /** The same on a course that is like no other. */
  List<Reading> irregular() {
    return irregular;
  }
}
