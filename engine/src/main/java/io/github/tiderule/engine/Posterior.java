package io.github.tiderule.engine;

import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.timeline.ComingValue;
import io.github.tiderule.engine.timeline.Density;
import io.github.tiderule.engine.timeline.Estimate;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.Foresight;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.engine.timeline.Timeline;
import io.github.tiderule.rules.fact.assay.Series;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * What the estimator believes of a season, finely enough to be drawn: the densities of LH peak and
 * ovulation, and the course of progesterone. Everything is told given that she ovulates this time.
 *
 * <p>Immutable. Nothing is worked out before it is asked for.
 */
public final class Posterior {

  private static final double LOW = 0.05;
  private static final double HIGH = 0.95;

  private final Evidence evidence;
  private final Estimate estimate;
  private final Foresight foresight;
  private final TimeAxis axis;

  private Posterior(Evidence evidence, Estimate estimate, Foresight foresight, TimeAxis axis) {
    this.evidence = evidence;
    this.estimate = estimate;
    this.foresight = foresight;
    this.axis = axis;
  }

  static Posterior of(Dated dated) {
    Timeline timeline = dated.season().tools().timeline();
    return new Posterior(
        dated.evidence(),
        dated.estimate(),
        timeline.foresight(dated.evidence(), dated.estimate()),
        dated.season().axis());
  }

  /**
   * How likely something is at a time.
   *
   * @param perDay probability density, 1/day
   */
  public record Likely(Instant at, double perDay) {}

  /**
   * Where a progesterone value drawn at a time would read, as one series reads: 9 times in 10
   * between the outer two. Her own swing from hour to hour and the error of the method are in it.
   *
   * @param low 5 % of results lie below, ng/mL
   * @param median ng/mL
   * @param high 5 % of results lie above, ng/mL
   */
  public record Expected(Instant at, double low, double median, double high) {}

  /** Density of the LH peak, in time order. */
  public List<Likely> lhPeak() {
    return drawn(estimate.peak());
  }

  /** Density of ovulation, in time order. */
  public List<Likely> ovulation() {
    return drawn(estimate.ovulation());
  }

  /** Whether any progesterone number, limit or band is behind it. */
  public boolean restsOnProgesterone() {
    return !evidence.values().isEmpty() || !evidence.intervals().isEmpty();
  }

  /**
   * The course of progesterone as one laboratory and method would read it, each value foreseen from
   * all that is known, earlier and later.
   *
   * @param instants any, in any order; the answer keeps it
   */
  public List<Expected> course(Series series, List<Instant> instants) {
    List<Expected> course = new ArrayList<>();
    for (Instant at : instants) {
      ComingValue value = foresight.value(series, axis.day(at));
      course.add(new Expected(at, value.quantile(LOW), value.quantile(0.5), value.quantile(HIGH)));
    }
    return List.copyOf(course);
  }

  private List<Likely> drawn(Density density) {
    List<Likely> drawn = new ArrayList<>();
    for (int i = 0; i < density.size(); i++) {
      drawn.add(new Likely(axis.instant(density.at(i)), density.value(i)));
    }
    return List.copyOf(drawn);
  }
}
