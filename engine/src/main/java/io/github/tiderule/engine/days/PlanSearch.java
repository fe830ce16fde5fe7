package io.github.tiderule.engine.days;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Exhaustive search over sets of one to four doses on allowed slots.
 *
 * <p>Slots that alone meet almost nothing beside the best one are left out of larger sets. Equal
 * shares go to the earlier set, so the answer does not depend on any order of the input.
 */
final class PlanSearch {

  /** A slot whose own share is below this part of the best one's is not combined. */
  private static final double WORTH = 0.1;

  /** Shares closer than this count as equal. */
  private static final double TIE = 1e-9;

  /** How many sets, best first, are kept. */
  private static final int KEPT = 12;

  private final EggShares shares;
  private final double[] hours;
  private final boolean[] allowed;
  private final double spacing;
  private final double nearTie;
  private final double[] alone;
  private final Map<Integer, List<ScoredPlan>> found = new HashMap<>();

  /**
   * @param hours time of each slot, in hours on any axis, increasing
   * @param allowed which slots may be used
   * @param spacing least hours between two doses
   * @param nearTie sets this close to the best go by how much each of their doses meets alone, so
   *     that a plan stands even if one of its doses fails
   */
  PlanSearch(EggShares shares, double[] hours, boolean[] allowed, double spacing, double nearTie) {
    this.shares = shares;
    this.hours = hours;
    this.allowed = allowed;
    this.spacing = spacing;
    this.nearTie = nearTie;
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
        double most = sets.stream().mapToDouble(Found::mean).max().orElse(0);
        sets.sort(
            Comparator.comparing((Found f) -> f.mean() < most - nearTie)
                .thenComparingDouble(f -> f.mean() < most - nearTie ? -f.mean() : -alone(f))
                .thenComparing(f -> f.slots().toString()));
        return sets.stream().limit(KEPT).map(this::score).toList();
      }
    }
    return List.of();
  }

  /**
   * For every first slot the set of so many doses that follow it as closely as they may: plans for
   * whatever a test may bring.
   */
  List<ScoredPlan> spread(int doses) {
    List<Integer> candidates = new ArrayList<>();
    for (int s = 0; s < shares.slots(); s++) {
      if (allowed[s]) {
        candidates.add(s);
      }
    }
    List<ScoredPlan> plans = new ArrayList<>();
    for (int c = 0; c < candidates.size(); c++) {
      List<Integer> chosen = new ArrayList<>(List.of(candidates.get(c)));
      for (int d = c + 1; d < candidates.size() && chosen.size() < doses; d++) {
        if (hours[candidates.get(d)] - hours[chosen.get(chosen.size() - 1)] >= spacing) {
          chosen.add(candidates.get(d));
        }
      }
      if (chosen.size() == doses) {
        plans.add(score(chosen));
      }
    }
    return plans;
  }

  private record Found(List<Integer> slots, double mean) {}

  /** What each dose of a set meets alone, summed. */
  private double alone(Found set) {
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
      if (allowed[s] && gain > 0 && gain >= WORTH * most) {
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
