package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The scale of one laboratory, from blood that it and another laboratory both measured. The package
 * page is its specification.
 *
 * @param logFactor log of what it reads per 1 ng/mL by radioimmunoassay; 0 where no pair counted
 * @param logSd spread of that; infinite where no pair counted
 * @param used places of the pairs that counted, from 0
 * @param odd places of those that lie far from the others
 * @param low places of those too low to tell a scale
 */
public record LearnedScale(
    double logFactor, double logSd, List<Integer> used, List<Integer> odd, List<Integer> low) {

  /** The parameter that says how closely a method's scale was learned. */
  static final Map<Method, String> LOG_SD =
      Map.of(
          Method.CLIA, "timeline.laboratory.clia-log-sd",
          Method.ECLIA, "timeline.laboratory.eclia-log-sd",
          Method.ELFA, "timeline.laboratory.elfa-log-sd",
          Method.FEIA, "timeline.laboratory.feia-log-sd",
          Method.FLUORESCENCE, "timeline.laboratory.fluorescence-log-sd",
          Method.DRY_SLIDE, "timeline.laboratory.dry-slide-log-sd",
          Method.UNKNOWN, "timeline.laboratory.unknown-log-sd");

  /** How many pairs the published repeatability counts for. */
  private static final int PRIOR_PAIRS = 8;

  public LearnedScale {
    used = List.copyOf(used);
    odd = List.copyOf(odd);
    low = List.copyOf(low);
  }

  /**
   * One serum by two laboratories.
   *
   * @param value by the one whose scale is asked for, ng/mL, above 0
   * @param other by the one it is held against, ng/mL, above 0
   */
  public record Pair(double value, double other) {}

  /** Whether a method has a scale to learn; radioimmunoassay is the scale itself. */
  public static boolean learns(Method method) {
    return LOG_SD.containsKey(method);
  }

  /**
   * The parameter that holds the spread of a learned scale.
   *
   * @throws IllegalArgumentException if the method learns none
   */
  public static String logSdOf(Method method) {
    String id = LOG_SD.get(method);
    if (id == null) {
      throw new IllegalArgumentException(method.word() + " learns no scale");
    }
    return id;
  }

  /** The parameter that holds the scale. */
  public static String factorOf(Method method) {
    return "reading.factor." + method.word();
  }

  /**
   * The scale of a laboratory.
   *
   * @param method of the laboratory
   * @param against method of the other
   */
  public static LearnedScale of(
      Parameters parameters, Method method, Method against, List<Pair> pairs) {
    Map<Method, List<Assay>> assays = Assay.load();
    List<Assay> own = assays.getOrDefault(method, List.of());
    double least = parameters.value("timeline.laboratory.least-level");
    double far = parameters.value("timeline.laboratory.odd-log");
    List<Integer> low =
        IntStream.range(0, pairs.size())
            .filter(i -> Math.min(pairs.get(i).value(), pairs.get(i).other()) < least)
            .boxed()
            .toList();
    List<Integer> high =
        IntStream.range(0, pairs.size()).filter(i -> !low.contains(i)).boxed().toList();
    if (high.isEmpty()) {
      return new LearnedScale(0, Double.POSITIVE_INFINITY, List.of(), List.of(), low);
    }
    double[] ratios =
        high.stream()
            .mapToDouble(i -> Math.log(pairs.get(i).value() / pairs.get(i).other()))
            .toArray();
    double middle = median(ratios);
    List<Integer> used = new ArrayList<>();
    List<Integer> odd = new ArrayList<>();
    for (int k = 0; k < ratios.length; k++) {
      (Math.abs(ratios[k] - middle) > far ? odd : used).add(high.get(k));
    }
    return mixed(own, assays.getOrDefault(against, List.of()), pairs, used, odd, low);
  }

  private static LearnedScale mixed(
      List<Assay> own,
      List<Assay> others,
      List<Pair> pairs,
      List<Integer> used,
      List<Integer> odd,
      List<Integer> low) {
    double sum = 0;
    double first = 0;
    double second = 0;
    for (Assay other : others) {
      double[] logs =
          used.stream()
              .mapToDouble(
                  i -> Math.log(pairs.get(i).value()) - other.logTrue(pairs.get(i).other()))
              .toArray();
      double mean = Arrays.stream(logs).average().orElseThrow();
      double error = sq(other.scaleLogSd()) + noise(own.get(0), other, pairs, used, logs, mean);
      for (Assay way : own) {
        double scale = sq(way.scaleLogSd());
        double expected = Math.log(way.slope());
        double sd = Math.sqrt(scale + error);
        double weight = other.weight() * way.weight() * Normal.density((mean - expected) / sd) / sd;
        double variance = 1 / (1 / scale + 1 / error);
        double at = variance * (expected / scale + mean / error);
        sum += weight;
        first += weight * at;
        second += weight * (variance + sq(at));
      }
    }
    double mean = first / sum;
    return new LearnedScale(mean, Math.sqrt(Math.max(0, second / sum - sq(mean))), used, odd, low);
  }

  /** Variance of the mean of the logs: what repeatability says and what is seen, half and half. */
  private static double noise(
      Assay own, Assay other, List<Pair> pairs, List<Integer> used, double[] logs, double mean) {
    double expected = 0;
    double seen = 0;
    for (int k = 0; k < logs.length; k++) {
      Pair pair = pairs.get(used.get(k));
      expected += sq(own.cvAt(pair.value())) + sq(other.cvAt(pair.other()));
      seen += sq(logs[k] - mean);
    }
    double degrees = logs.length + PRIOR_PAIRS - 1.0;
    double variance = (PRIOR_PAIRS * expected / logs.length + seen) / degrees;
    return variance / logs.length;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  private static double sq(double x) {
    return x * x;
  }
}
