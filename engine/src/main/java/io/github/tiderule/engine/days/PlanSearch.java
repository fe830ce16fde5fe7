package io.github.tiderule.engine.days;

import io.github.tiderule.engine.patience.Patience;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Exhaustive search over sets of one to four doses on allowed slots. Not safe for use by several
 * threads.
 *
 * <p>Slots that alone meet almost nothing beside the best one are left out of larger sets. Equal
 * shares go to the earlier set, so the answer does not depend on any order of the input.
 */
public final class PlanSearch {

  /** Shares closer than this count as equal. */
  private static final double TIE = 1e-9;

  /** Tenth percentiles this close count as equal. */
  private static final double ALIKE = 0.005;

  private static final Comparator<ScoredPlan> SAFEST =
      Comparator.comparingDouble(plan -> -Math.rint(plan.p10() / ALIKE));

  /** How many sets, best first, are kept. */
  private static final int KEPT = 60;

  private final EggShares shares;
  private final double[] hours;
  private final boolean[] allowed;
  private final double spacing;
  private final double nearTie;
  private final double worth;
  private final Practice practice;
  private final double[] alone;
  private final Map<Integer, List<ScoredPlan>> found = new HashMap<>();

  /**
   * @param hours time of each slot, in hours on any axis, increasing
   * @param allowed which slots may be used
   * @param spacing least hours between two doses
   * @param nearTie sets of several doses this close to the best go by their tenth percentile, and
   *     where that is alike by how much each of their doses meets alone, so that a plan stands even
   *     if ovulation lies at an edge or one of its doses fails
   * @param worth a slot that alone adds less than this part of what the best one adds is not
   *     combined
   * @param practice what tells apart sets that lie within its margin of the best, before all else
   */
  PlanSearch(
      EggShares shares,
      double[] hours,
      boolean[] allowed,
      double spacing,
      double nearTie,
      double worth,
      Practice practice) {
    this.shares = shares;
    this.hours = hours;
    this.allowed = allowed;
    this.spacing = spacing;
    this.nearTie = nearTie;
    this.worth = worth;
    this.practice = practice;
    alone = new double[shares.slots()];
    for (int s = 0; s < alone.length; s++) {
      alone[s] = shares.meanWith(shares.start(), s);
    }
  }

  /**
   * The best sets of exactly so many doses, near ties by robustness, then best first; fewer where
   * there is no room.
   */
  List<ScoredPlan> best(int doses) {
    return found.computeIfAbsent(doses, this::search);
  }

  private List<ScoredPlan> search(int doses) {
    List<Integer> candidates = candidates();
    for (int k = Math.min(doses, candidates.size()); k >= 1; k--) {
      List<Found> sets = new ArrayList<>();
      extend(candidates, 0, shares.start(), new ArrayList<>(), k, sets);
      if (!sets.isEmpty()) {
        // they are found earliest first, and equal ones stay so
        sets.sort(Comparator.comparingDouble(f -> -f.mean()));
        List<Found> first = practised(sets);
        Set<Found> taken = Set.copyOf(first);
        List<ScoredPlan> plans = new ArrayList<>();
        Stream.concat(first.stream(), sets.stream().filter(set -> !taken.contains(set)))
            .limit(KEPT)
            .map(this::score)
            .forEach(plans::add);
        double most = first.get(0).mean();
        int near = 0;
        while (k > 1
            && near < Math.min(first.size(), KEPT)
            && first.get(near).mean() >= most - nearTie) {
          near++;
        }
        plans.subList(0, near).sort(SAFEST.thenComparingDouble(plan -> -alone(plan)));
        return List.copyOf(plans);
      }
    }
    return List.of();
  }

  /**
   * Sets that whatever a test may bring could make the best: every set of one or two more doses,
   * and for more of them, from every first slot, those that follow it as closely as they may.
   *
   * @param before slots that are settled, in time order, maybe none
   * @param doses how many doses in all; no sets where all of them are settled
   */
  List<List<Integer>> options(List<Integer> before, int doses) {
    List<List<Integer>> options = new ArrayList<>();
    List<Integer> candidates = before.size() < doses ? candidates() : List.of();
    for (int c = 0; c < candidates.size(); c++) {
      Patience.mustLast();
      List<Integer> one = followed(before, candidates.get(c));
      if (one.isEmpty()) {
        continue;
      }
      options.add(one);
      int left = doses - one.size();
      List<Integer> closest = one;
      for (int d = c + 1; d < candidates.size() && left > 0; d++) {
        List<Integer> two = followed(one, candidates.get(d));
        if (!two.isEmpty() && left <= 2) {
          options.add(two);
        }
        if (closest.size() < doses) {
          List<Integer> longer = followed(closest, candidates.get(d));
          closest = longer.isEmpty() ? closest : longer;
        }
      }
      if (left > 1 && closest.size() > one.size() + 1) {
        options.add(closest);
      }
    }
    return options;
  }

  /** A set with one slot more, empty where that would come too soon. */
  private List<Integer> followed(List<Integer> set, int slot) {
    boolean room = set.isEmpty() || hours[slot] - hours[set.get(set.size() - 1)] >= spacing;
    List<Integer> longer = new ArrayList<>(room ? set : List.of());
    if (room) {
      longer.add(slot);
    }
    return longer;
  }

  private record Found(List<Integer> slots, double mean) {}

  /** Of the sets near the best, those that are most like practice; best first. */
  private List<Found> practised(List<Found> sets) {
    double ovulation = 24 * shares.median();
    double least = sets.get(0).mean() - Math.max(practice.margin(), nearTie);
    List<Found> near = sets.stream().takeWhile(set -> set.mean() >= least).toList();
    int fewest = near.stream().mapToInt(set -> faults(set, ovulation)).min().orElse(0);
    return near.stream().filter(set -> faults(set, ovulation) == fewest).toList();
  }

  private int faults(Found set, double ovulation) {
    return practice.faults(
        set.slots().stream().mapToDouble(slot -> hours[slot]).toArray(), ovulation);
  }

  /** What each dose of a set meets alone, summed. */
  private double alone(ScoredPlan set) {
    return set.slots().stream().mapToDouble(slot -> alone[slot]).sum();
  }

  private List<Integer> candidates() {
    double base = shares.mean(shares.start());
    double most = 0;
    for (int s = 0; s < alone.length; s++) {
      if (allowed[s]) {
        most = Math.max(most, alone[s] - base);
      }
    }
    List<Integer> candidates = new ArrayList<>();
    for (int s = 0; s < alone.length; s++) {
      double gain = alone[s] - base;
      if (allowed[s] && gain > 0 && gain >= worth * most) {
        candidates.add(s);
      }
    }
    return candidates;
  }

  private void extend(
      List<Integer> candidates,
      int from,
      double[] misses,
      List<Integer> chosen,
      int left,
      List<Found> sets) {
    Patience.mustLast();
    double[] vector = left > 1 ? shares.vector() : misses;
    for (int c = from; c < candidates.size(); c++) {
      int slot = candidates.get(c);
      boolean tooClose =
          !chosen.isEmpty() && hours[slot] - hours[chosen.get(chosen.size() - 1)] < spacing;
      if (tooClose) {
        continue;
      }
      chosen.add(slot);
      if (left == 1) {
        sets.add(new Found(List.copyOf(chosen), round(shares.meanWith(misses, slot))));
      } else {
        shares.and(misses, slot, vector);
        extend(candidates, c + 1, vector, chosen, left - 1, sets);
      }
      chosen.remove(chosen.size() - 1);
    }
  }

  private static double round(double share) {
    return Math.rint(share / TIE) * TIE;
  }

  /** A set with its mean and tenth percentile. */
  ScoredPlan score(List<Integer> slots) {
    double[] misses = misses(slots);
    return new ScoredPlan(slots, shares.mean(misses), shares.p10(misses));
  }

  private ScoredPlan score(Found found) {
    return score(found.slots());
  }

  /** The shares it searches in. */
  EggShares shares() {
    return shares;
  }

  /** Products of misses of a set. */
  double[] misses(List<Integer> slots) {
    double[] misses = shares.start().clone();
    for (int slot : slots) {
      shares.and(misses, slot, misses);
    }
    return misses;
  }

  /**
   * The best plan of as many doses as are worth giving.
   *
   * @param most most doses
   * @param worth egg share another dose must add
   */
  Optional<ScoredPlan> worthwhile(int most, double worth) {
    Optional<ScoredPlan> plan = best(1).stream().findFirst();
    for (int doses = 2; doses <= most && plan.isPresent(); doses++) {
      Optional<ScoredPlan> more = best(doses).stream().findFirst();
      if (more.isEmpty() || more.get().mean() - plan.get().mean() < worth) {
        break;
      }
      plan = more;
    }
    return plan;
  }
}
