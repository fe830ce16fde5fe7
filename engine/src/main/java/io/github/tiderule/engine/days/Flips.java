package io.github.tiderule.engine.days;

import io.github.tiderule.engine.timeline.ComingValue;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Finds the values of one progesterone number at which the best days become others.
 *
 * <p>From the value as it is, or from the likeliest, it goes up and down through the values that
 * are at all likely, and halves the step in which the days first change. Days count as changed when
 * keeping to those planned would lose an egg share worth the change.
 */
public final class Flips {

  private static final int STEPS = 6;
  private static final int HALVINGS = 6;
  private static final int CELLS = 40;
  private static final double LOWEST = Math.log(0.1);
  private static final double HIGHEST = Math.log(60);

  private final DayTable table;
  private final ComingValue value;
  private final List<List<Integer>> plans;
  private final double[][] share;
  private final double[] cumulative = new double[CELLS + 1];
  private final double worth;

  private Flips(
      DayTable table,
      ComingValue value,
      List<List<Integer>> plans,
      double[][] share,
      double worth) {
    this.table = table;
    this.value = value;
    this.plans = plans;
    this.share = share;
    this.worth = worth;
    Arrays.fill(cumulative, Double.NaN);
  }

  /**
   * A change of the days.
   *
   * @param ngPerMl the value at which they change
   * @param above whether they change above it, or below
   * @param slots the best set beyond it
   */
  public record Flip(double ngPerMl, boolean above, List<Integer> slots) {}

  /**
   * Prepares a search.
   *
   * @param best the plan that stands
   * @param settled its first doses that are given whatever the value
   * @param known when the value is known; sets that cannot be chosen by then are left out
   */
  public static Flips of(
      DayTable table,
      Parameters parameters,
      Set<LocalDate> forbidden,
      double spacingHours,
      ScoredPlan best,
      List<Integer> settled,
      Instant known,
      ComingValue value) {
    PlanSearch search =
        table.search(value.ovulations(), value.before(), parameters, forbidden, spacingHours);
    List<List<Integer>> plans = new ArrayList<>();
    plans.add(best.slots());
    for (List<Integer> set : search.options(settled, best.slots().size())) {
      boolean open =
          set.stream()
              .skip(settled.size())
              .noneMatch(slot -> table.slots().get(slot).decideBy().isBefore(known));
      if (open) {
        plans.add(set);
      }
    }
    double[][] share = new double[plans.size()][];
    for (int p = 0; p < share.length; p++) {
      share[p] = search.shares().byOvulation(search.misses(plans.get(p)));
    }
    return new Flips(table, value, plans, share, parameters.value("planning.flip-share"));
  }

  private static double edge(int cell) {
    return LOWEST + (HIGHEST - LOWEST) * cell / CELLS;
  }

  /** Log of the value below which a share of the results would lie. */
  private double quantile(double share) {
    int low = 0;
    int high = CELLS;
    if (cumulative(high) < share) {
      return HIGHEST;
    }
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (cumulative(middle) >= share) {
        high = middle;
      } else {
        low = middle;
      }
    }
    double step = cumulative(high) - cumulative(low);
    double part = step > 0 ? (share - cumulative(low)) / step : 0;
    return edge(low) + Math.max(0, part) * (edge(high) - edge(low));
  }

  /** Probability of a result below an edge, reckoned when first asked for. */
  private double cumulative(int cell) {
    if (Double.isNaN(cumulative[cell])) {
      cumulative[cell] = value.below(Math.exp(edge(cell)));
    }
    return cumulative[cell];
  }

  /** The likeliest value to come, ng/mL: as often above as below. */
  public double middle() {
    return Math.exp(quantile(0.5));
  }

  /**
   * Where the days change, going up and down from a value.
   *
   * @param ngPerMl where to start, positive
   * @param chance values less likely than this at either end are left alone
   */
  public List<Flip> from(double ngPerMl, double chance) {
    double start = Math.log(ngPerMl);
    return Stream.of(
            towards(start, Math.max(start, quantile(1 - chance))),
            towards(start, Math.min(start, quantile(chance))))
        .flatMap(Optional::stream)
        .toList();
  }

  private Optional<Flip> towards(double start, double end) {
    double kept = start;
    for (int step = 1; step <= STEPS; step++) {
      double next = start + (end - start) * step / STEPS;
      if (changed(next) >= 0) {
        return Optional.of(between(kept, next));
      }
      kept = next;
    }
    return Optional.empty();
  }

  private Flip between(double kept, double changed) {
    double inside = kept;
    double beyond = changed;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (inside + beyond) / 2;
      if (changed(middle) >= 0) {
        beyond = middle;
      } else {
        inside = middle;
      }
    }
    return new Flip(Math.exp((inside + beyond) / 2), changed > kept, plans.get(changed(beyond)));
  }

  /** The place of the better set after a value, or less than 0 where the days stay. */
  private int changed(double logValue) {
    double[] after = value.after(Math.exp(logValue));
    double stays = mean(0, after);
    int best = 0;
    double most = stays;
    for (int p = 1; p < share.length; p++) {
      double mean = mean(p, after);
      if (mean > most + 1e-12) {
        most = mean;
        best = p;
      }
    }
    boolean others =
        !Planner.days(table, plans.get(best)).equals(Planner.days(table, plans.get(0)));
    return others && most - stays >= worth ? best : -1;
  }

  private double mean(int plan, double[] chance) {
    double sum = 0;
    for (int i = 0; i < chance.length; i++) {
      sum += chance[i] * share[plan][i];
    }
    return sum;
  }
}
