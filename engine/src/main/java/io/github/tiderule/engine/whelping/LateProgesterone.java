package io.github.tiderule.engine.whelping;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Progesterone in the last days before whelping, each method on its own scale where limits were
 * published for it. A number counts as the class it was published in, and no more closely: the
 * course of these days is too uneven between bitches for that.
 */
public final class LateProgesterone {

  private static final double[] DAYS = {0, 1, 2, 4, 8};

  /** Parameters of a method: the level at {@link #DAYS}, then the share that falls late. */
  private static final List<String> BY_RIA =
      List.of(
          "whelping.progesterone.ria-at-whelping",
          "whelping.progesterone.ria-day-before",
          "whelping.progesterone.ria-two-days-before",
          "whelping.progesterone.ria-four-days-before",
          "whelping.progesterone.ria-eight-days-before",
          "whelping.progesterone.ria-late-fall");

  private static final List<String> BY_CLIA =
      List.of(
          "whelping.progesterone.clia-at-whelping",
          "whelping.progesterone.clia-day-before",
          "whelping.progesterone.clia-two-days-before",
          "whelping.progesterone.clia-four-days-before",
          "whelping.progesterone.clia-eight-days-before",
          "whelping.progesterone.clia-late-fall");

  private static final List<String> BY_DRY_SLIDE =
      List.of(
          "whelping.progesterone.dry-slide-at-whelping",
          "whelping.progesterone.dry-slide-day-before",
          "whelping.progesterone.dry-slide-two-days-before",
          "whelping.progesterone.dry-slide-four-days-before",
          "whelping.progesterone.dry-slide-eight-days-before",
          "whelping.progesterone.dry-slide-late-fall");

  private static final List<String> DRY_SLIDE_EDGES =
      List.of(
          "whelping.progesterone.dry-slide-first",
          "whelping.progesterone.dry-slide-second",
          "whelping.progesterone.dry-slide-third",
          "whelping.progesterone.dry-slide-fourth",
          "whelping.progesterone.dry-slide-fifth");

  private final Course radioimmunoassay;
  private final Course chemiluminescence;
  private final Course drySlide;
  private final Course other;

  private LateProgesterone(Parameters parameters) {
    double within = parameters.value("whelping.progesterone.within-two-days");
    double sd = parameters.value("whelping.progesterone.log-sd");
    double[] limits = {parameters.value("whelping.progesterone.within-a-day"), within};
    double[] floors = {within, parameters.value("whelping.progesterone.high")};
    double[] edges = DRY_SLIDE_EDGES.stream().mapToDouble(parameters::value).toArray();
    radioimmunoassay = Course.of(parameters, BY_RIA, sd, floors, limits);
    chemiluminescence = Course.of(parameters, BY_CLIA, sd, floors, limits);
    drySlide =
        Course.of(
            parameters,
            BY_DRY_SLIDE,
            parameters.value("whelping.progesterone.dry-slide-log-sd"),
            edges,
            edges);
    other =
        Course.of(
            parameters,
            BY_RIA,
            parameters.value("whelping.progesterone.other-log-sd"),
            floors,
            limits);
  }

  /** The model with the given numbers. */
  public static LateProgesterone of(Parameters parameters) {
    return new LateProgesterone(parameters);
  }

  /** Whether limits were published for a method, so that it is read on its own scale. */
  public static boolean hasOwn(Method method) {
    return method == Method.RIA || method == Method.CLIA || method == Method.DRY_SLIDE;
  }

  /**
   * Probability, so many days before whelping, of a result in the same class, or within the same
   * limits or band.
   *
   * @param days before whelping; negative counts as 0
   * @param low ng/mL, on the method's own scale where it {@linkplain #hasOwn has one}, and else on
   *     that of radioimmunoassay; 0 for none
   * @param high equal to {@code low} for a number; may be infinite
   */
  public double likelihood(Method method, double days, double low, double high) {
    return course(method).likelihood(Math.max(0, days), low, high);
  }

  /**
   * The middle level so many days before whelping, ng/mL on the scale of {@link #likelihood}.
   *
   * @param days before whelping; negative counts as 0
   */
  public double level(Method method, double days) {
    return Math.exp(course(method).mean(Math.max(0, days)));
  }

  private Course course(Method method) {
    return switch (method) {
      case RIA -> radioimmunoassay;
      case CLIA -> chemiluminescence;
      case DRY_SLIDE -> drySlide;
      default -> other;
    };
  }

  /**
   * The last days by one method.
   *
   * @param logs of the level at {@link #DAYS}
   * @param late share whose level tells nothing of the day
   * @param floors a number is known to be no less than the greatest of these that it reaches
   * @param limits a number is known to be less than the least of these that it is below
   */
  private record Course(
      double[] logs,
      double sd,
      double late,
      double lateLog,
      double lateSd,
      double[] floors,
      double[] limits) {

    static Course of(
        Parameters parameters, List<String> names, double sd, double[] floors, double[] limits) {
      return new Course(
          names.stream()
              .limit(DAYS.length)
              .mapToDouble(name -> Math.log(parameters.value(name)))
              .toArray(),
          sd,
          parameters.value(names.get(DAYS.length)),
          Math.log(parameters.value("whelping.progesterone.late-level")),
          parameters.value("whelping.progesterone.late-log-sd"),
          floors,
          limits);
    }

    double likelihood(double days, double low, double high) {
      double from = low;
      double to = high;
      if (low == high) {
        DoubleStream reached = Arrays.stream(floors).filter(floor -> low >= floor);
        DoubleStream missed = Arrays.stream(limits).filter(limit -> low < limit);
        from = reached.max().orElse(0);
        to = missed.min().orElse(Double.POSITIVE_INFINITY);
      }
      return (1 - late) * between(from, to, mean(days), sd)
          + late * between(from, to, lateLog, lateSd);
    }

    private static double between(double low, double high, double mean, double sd) {
      double above = low > 0 ? Bell.below(Math.log(low), mean, sd) : 0;
      double below = Double.isInfinite(high) ? 1 : Bell.below(Math.log(high), mean, sd);
      return below - above;
    }

    double mean(double days) {
      int i = 0;
      while (i < DAYS.length - 1 && days >= DAYS[i + 1]) {
        i++;
      }
      if (i == DAYS.length - 1) {
        return logs[i];
      }
      double share = (days - DAYS[i]) / (DAYS[i + 1] - DAYS[i]);
      return logs[i] + share * (logs[i + 1] - logs[i]);
    }
  }
}
