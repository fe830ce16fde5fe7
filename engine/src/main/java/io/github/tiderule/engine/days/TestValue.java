package io.github.tiderule.engine.days;

import io.github.tiderule.engine.patience.Patience;
import io.github.tiderule.engine.timeline.Outlook;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the result of a test could change.
 *
 * <p>For each possible result the posterior of ovulation is {@code p(ω) P(result | ω)}, and the
 * best plan is chosen anew among those that can still be chosen when the result is there. Doses
 * whose deadline comes before the result are either given as planned ("act"), and only later doses
 * follow the result, or held back so that every dose follows it ("wait"). The value of the test is
 * the expected egg share of the better of the two, less that of the best plan without it: never
 * negative, since a result may be ignored. It looks one test ahead.
 */
public final class TestValue {

  private final DayTable table;
  private final PlanSearch search;
  private final ScoredPlan best;
  private final int doses;
  private final double without;
  private final double[] chance;
  private final double[] ovulation;
  private final Map<List<Integer>, List<Option>> options = new HashMap<>();

  /** A set of slots that starts with those settled. */
  private record Option(List<Integer> slots, Instant decideBy, double[] share) {}

  private TestValue(DayTable table, PlanSearch search, ScoredPlan best, int doses) {
    this.table = table;
    this.search = search;
    this.best = best;
    this.doses = doses;
    chance = search.shares().chances();
    ovulation = search.shares().days();
    without =
        after(List.of()).stream()
            .mapToDouble(option -> mean(option.share()))
            .reduce(best.mean(), Math::max);
  }

  private double mean(double[] share) {
    double sum = 0;
    for (int i = 0; i < chance.length; i++) {
      sum += chance[i] * share[i];
    }
    return sum;
  }

  /**
   * Prepares the plans that could be made.
   *
   * @param best the plan that stands
   */
  public static TestValue of(DayTable table, PlanSearch search, ScoredPlan best) {
    return new TestValue(table, search, best, best.slots().size());
  }

  private List<Option> after(List<Integer> settled) {
    List<Option> known = options.get(settled);
    if (known == null) {
      List<List<Integer>> sets = new ArrayList<>();
      if (best.slots().subList(0, settled.size()).equals(settled)) {
        sets.add(best.slots());
      }
      sets.addAll(search.options(settled, doses));
      known = sets.stream().map(set -> option(set, settled.size())).toList();
      options.put(settled, known);
    }
    return known;
  }

  private Option option(List<Integer> set, int settled) {
    Instant decideBy =
        set.stream()
            .skip(settled)
            .map(slot -> table.slots().get(slot).decideBy())
            .min(Instant::compareTo)
            .orElse(Instant.MAX);
    return new Option(set, decideBy, search.shares().byOvulation(search.misses(set)));
  }

  /** The doses of the plan that stands which must be decided before a time. */
  private List<Integer> settledBefore(Instant result) {
    List<Integer> settled = new ArrayList<>();
    for (int slot : best.slots()) {
      if (table.slots().get(slot).decideBy().isBefore(result)) {
        settled.add(slot);
      }
    }
    return settled;
  }

  /**
   * What a test could bring.
   *
   * @param outlook how likely each result is, by when she ovulates
   * @param result when the result is there
   */
  public Outcome outcome(Outlook outlook, Instant result) {
    double[][] weight = new double[outlook.results()][chance.length];
    for (int r = 0; r < weight.length; r++) {
      for (int i = 0; i < chance.length; i++) {
        weight[r][i] = chance[i] * outlook.chance(r, ovulation[i]);
      }
    }
    List<Integer> settled = settledBefore(result);
    List<Option> acting = open(settled, result);
    List<Option> waiting = settled.isEmpty() ? acting : open(List.of(), result);
    double[] act = follow(weight, acting);
    double[] wait = follow(weight, waiting);
    List<Option> better = sum(act) >= sum(wait) ? acting : waiting;
    return new Outcome(
        Math.max(0, Math.max(sum(act), sum(wait)) - without),
        better.stream().anyMatch(option -> !option.slots().equals(best.slots())),
        settled,
        sum(act),
        sum(wait),
        shortfall(act, wait),
        shortfall(wait, act));
  }

  /**
   * What the best of tests could win: the same with ovulation itself for its result. No test whose
   * result is there at that time is worth more.
   */
  public double most(Instant result) {
    List<Integer> settled = settledBefore(result);
    double most = most(open(settled, result));
    if (!settled.isEmpty()) {
      most = Math.max(most, most(open(List.of(), result)));
    }
    return Math.max(0, most - without);
  }

  private double most(List<Option> open) {
    double sum = 0;
    for (int i = 0; i < chance.length; i++) {
      double most = 0;
      for (Option option : open) {
        most = Math.max(most, option.share()[i]);
      }
      sum += chance[i] * most;
    }
    return sum;
  }

  private List<Option> open(List<Integer> settled, Instant result) {
    return after(settled).stream().filter(option -> !option.decideBy().isBefore(result)).toList();
  }

  /** Expected share at each ovulation when the best option is taken after every result. */
  private double[] follow(double[][] weight, List<Option> open) {
    double[] share = new double[chance.length];
    for (double[] one : weight) {
      Patience.mustLast();
      double most = 0;
      double[] chosen = null;
      for (Option option : open) {
        double value = 0;
        double[] shares = option.share();
        for (int i = 0; i < one.length; i++) {
          value += one[i] * shares[i];
        }
        if (chosen == null || value > most + 1e-12) {
          most = value;
          chosen = shares;
        }
      }
      for (int i = 0; chosen != null && i < one.length; i++) {
        share[i] += one[i] * chosen[i];
      }
    }
    return share;
  }

  private static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }

  /** By how much one falls short of another, where it does. */
  private static double shortfall(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += Math.max(0, other[i] - one[i]);
    }
    return sum;
  }

  /**
   * What a test could bring, in egg share.
   *
   * @param gain expected share won, not negative
   * @param canChange whether any other plan can still be chosen when the result is there
   * @param settled doses of the plan that must be decided before the result, by slot
   * @param acting expected share when such doses are given as planned
   * @param waiting expected share when every dose waits for the result
   * @param actingLoses expected share that acting loses where waiting would have done better
   * @param waitingLoses expected share that waiting loses where acting would have done better
   */
  public record Outcome(
      double gain,
      boolean canChange,
      List<Integer> settled,
      double acting,
      double waiting,
      double actingLoses,
      double waitingLoses) {

    /** Shares this close are the same, whatever the last digits say. */
    private static final double SAME = 1e-6;

    /** Whether giving the early doses as planned is the cheaper mistake, or as cheap. */
    public boolean actRather() {
      return actRather(0);
    }

    /**
     * Whether giving the early doses as planned is worth it.
     *
     * @param least egg share it must win at the least
     */
    public boolean actRather(double least) {
      return acting >= waiting + least - SAME;
    }
  }
}
