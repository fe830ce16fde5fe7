package io.github.tiderule.engine.days;

import io.github.tiderule.engine.timeline.CurveReading;
import io.github.tiderule.rules.fact.SemenPlan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * What a coming progesterone result could change.
 *
 * <p>For each of many equally spaced log values the posterior of ovulation after such a result is
 * {@code p(ω) P(value | ω)} and the plan is chosen anew among the slots that lie after the result;
 * the slots before it stay what they are without the test. The value of the test is the expected
 * egg share of the best plan after it, less that of the best plan now; it is never negative, since
 * the result may be ignored. Plans compared are the plan that stands and, for every first slot, the
 * closest set of so many doses or fewer.
 */
public final class TestValue {

  private static final int VALUES = 36;
  private static final double LOWEST = Math.log(0.3);
  private static final double HIGHEST = Math.log(40);

  private final double[] chance;
  private final List<ScoredPlan> plans;
  private final double[][] shareByOvulation;
  private final double[] ovulation;

  private TestValue(
      double[] chance, List<ScoredPlan> plans, double[][] shareByOvulation, double[] ovulation) {
    this.chance = chance;
    this.plans = plans;
    this.shareByOvulation = shareByOvulation;
    this.ovulation = ovulation;
  }

  /**
   * Prepares the plans that could be made.
   *
   * @param best the plan that stands now
   */
  public static TestValue of(
      DayTable table,
      SemenPlan semenPlan,
      double spacingHours,
      Set<LocalDate> forbidden,
      ScoredPlan best) {
    PlanSearch search = table.search(forbidden, spacingHours, 0);
    int doses = best.slots().size();
    List<ScoredPlan> plans = new ArrayList<>();
    plans.add(best);
    Set<List<Integer>> known = new HashSet<>();
    known.add(best.slots());
    Integer wanted = semenPlan.doses();
    for (int k = wanted == null ? doses : wanted; k >= 1; k--) {
      for (ScoredPlan plan : search.spread(k)) {
        if (known.add(plan.slots())) {
          plans.add(plan);
        }
      }
    }
    EggShares shares = table.shares();
    double[][] byOvulation = new double[plans.size()][];
    for (int p = 0; p < byOvulation.length; p++) {
      byOvulation[p] = shares.byOvulation(search.misses(plans.get(p).slots()));
    }
    return new TestValue(shares.chances(), plans, byOvulation, shares.days());
  }

  /**
   * The plan that would be best for each possible result.
   *
   * @param at time of the draw, days on the axis
   * @param usable first slot that comes after the result
   * @param reading how a value depends on ovulation
   */
  public Outcome outcome(double at, int usable, CurveReading reading) {
    double width = (HIGHEST - LOWEST) / (VALUES - 1);
    double before = value(0, chance);
    List<Step> steps = new ArrayList<>();
    double after = 0;
    double seen = 0;
    for (int v = 0; v < VALUES; v++) {
      double log = LOWEST + v * width;
      double[] weight = new double[chance.length];
      double sum = 0;
      for (int i = 0; i < weight.length; i++) {
        double low = v == 0 ? Double.NEGATIVE_INFINITY : log - width / 2;
        double high = v == VALUES - 1 ? Double.POSITIVE_INFINITY : log + width / 2;
        weight[i] = chance[i] * reading.probability(at - ovulation[i], low, high);
        sum += weight[i];
      }
      int best = 0;
      double most = value(0, weight);
      for (int p = 1; p < plans.size(); p++) {
        if (plans.get(p).slots().get(0) >= usable) {
          double share = value(p, weight);
          if (share > most + 1e-12) {
            most = share;
            best = p;
          }
        }
      }
      after += most;
      seen += sum;
      steps.add(new Step(Math.exp(log), sum, plans.get(best)));
    }
    return new Outcome(Math.max(0, after - before * seen), steps);
  }

  private double value(int plan, double[] weight) {
    double sum = 0;
    double[] share = Objects.requireNonNull(shareByOvulation[plan]);
    for (int i = 0; i < weight.length; i++) {
      sum += weight[i] * share[i];
    }
    return sum;
  }

  /**
   * What a test could bring.
   *
   * @param gain expected egg share won
   * @param steps by rising value
   */
  public record Outcome(double gain, List<Step> steps) {}

  /**
   * A possible result.
   *
   * @param ngPerMl the value on the scale of the series
   * @param probability of a result about it
   * @param plan the best plan after it
   */
  public record Step(double ngPerMl, double probability, ScoredPlan plan) {}
}
