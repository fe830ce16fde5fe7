package io.github.tiderule.engine;

import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;

/**
 * How well whelpings were foretold over past seasons.
 *
 * @param seasons how many there are
 * @param medianDays median size of the error, days; null without any
 * @param p90Days its 90th percentile, days; null without any
 * @param biasDays mean error, days, positive where she whelped later than foretold; null without
 *     any
 * @param within share of whelpings inside their 9-in-10 interval; null without any
 * @param withinLow least share that so few seasons do not speak against, 95 % by Wilson's score
 * @param withinHigh greatest such share
 */
public record Accuracy(
    int seasons,
    @Nullable Double medianDays,
    @Nullable Double p90Days,
    @Nullable Double biasDays,
    @Nullable Double within,
    @Nullable Double withinLow,
    @Nullable Double withinHigh) {

  /** Fewer seasons than this say little of a kennel. */
  public static final int FEW = 10;

  private static final double Z = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.975);

  /**
   * One season looked back at.
   *
   * @param errorDays whelping less its forecast, days
   * @param within whether it lay inside the 9-in-10 interval
   */
  public record Season(double errorDays, boolean within) {}

  /** Of some seasons, perhaps none. */
  public static Accuracy of(List<Season> seasons) {
    int n = seasons.size();
    if (n == 0) {
      return new Accuracy(0, null, null, null, null, null, null);
    }
    double[] sizes = seasons.stream().mapToDouble(s -> Math.abs(s.errorDays())).sorted().toArray();
    double bias = seasons.stream().mapToDouble(Season::errorDays).average().orElseThrow();
    double share = seasons.stream().filter(Season::within).count() / (double) n;
    double z2 = Z * Z / n;
    double middle = (share + z2 / 2) / (1 + z2);
    double half = Z * Math.sqrt(share * (1 - share) / n + z2 / (4 * n)) / (1 + z2);
    return new Accuracy(
        n,
        quantile(sizes, 0.5),
        quantile(sizes, 0.9),
        bias,
        share,
        Math.max(0, middle - half),
        Math.min(1, middle + half));
  }

  /** Whether there are too few seasons to judge by. */
  public boolean few() {
    return seasons < FEW;
  }

  private static double quantile(double[] sorted, double share) {
    double place = share * (sorted.length - 1);
    int i = Math.min((int) place, Math.max(0, sorted.length - 2));
    double next = sorted[Math.min(i + 1, sorted.length - 1)];
    return sorted[i] + (place - i) * (next - sorted[i]);
  }
}
