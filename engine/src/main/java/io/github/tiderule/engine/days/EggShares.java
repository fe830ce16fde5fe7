package io.github.tiderule.engine.days;

import io.github.tiderule.engine.timeline.Density;
import java.util.Arrays;
import java.util.List;

/**
 * Egg share of sets of doses over where ovulation may lie.
 *
 * <p>For every ovulation of some weight and every kind of egg it holds the probability that each
 * slot's dose misses; a set of doses misses an egg when all of them do. Not safe for use by several
 * threads.
 */
final class EggShares {

  /** Ovulations of less weight than this are left out. */
  private static final double LEAST = 1e-5;

  private static final double TENTH = 0.1;

  /** Enough to tell shares apart by a millionth. */
  private static final int HALVINGS = 20;

  /** One dose with the time it is given at, in days on the axis of the ovulations. */
  record TimedDose(double day, Meeting meeting) {}

  private final double[] day;
  private final double[] chance;
  private final double[] weight;
  private final double[][] miss;
  private final double[] already;

  private EggShares(
      double[] day, double[] chance, double[] weight, double[][] miss, double[] already) {
    this.day = day;
    this.chance = chance;
    this.weight = weight;
    this.miss = miss;
    this.already = already;
  }

  /**
   * @param slots one dose for each slot
   * @param given doses already given
   */
  static EggShares of(Density ovulation, List<TimedDose> slots, List<TimedDose> given) {
    double[] days = new double[ovulation.size()];
    double[] chance = new double[ovulation.size()];
    int n = 0;
    double sum = 0;
    for (int i = 0; i < ovulation.size(); i++) {
      double one = ovulation.value(i) * ovulation.step();
      if (one >= LEAST) {
        days[n] = ovulation.at(i);
        chance[n++] = one;
        sum += one;
      }
    }
    days = Arrays.copyOf(days, n);
    chance = Arrays.copyOf(chance, n);
    for (int i = 0; i < n; i++) {
      chance[i] /= sum;
    }
    return over(days, chance, slots, given);
  }

  /**
   * The same over named ovulations.
   *
   * @param days when ovulation may lie
   * @param chance probability of each, summing to 1
   */
  static EggShares over(
      double[] days, double[] chance, List<TimedDose> slots, List<TimedDose> given) {
    int n = days.length;
    Meeting first = (slots.isEmpty() ? given : slots).get(0).meeting();
    int eggs = first.eggs();
    double[] weight = new double[eggs];
    for (int e = 0; e < eggs; e++) {
      weight[e] = first.weight(e);
    }
    double[][] miss = new double[slots.size()][];
    for (int s = 0; s < miss.length; s++) {
      miss[s] = misses(slots.get(s), days, eggs);
    }
    double[] already = new double[n * eggs];
    Arrays.fill(already, 1);
    for (TimedDose dose : given) {
      double[] one = misses(dose, days, eggs);
      for (int i = 0; i < already.length; i++) {
        already[i] *= one[i];
      }
    }
    return new EggShares(days, chance, weight, miss, already);
  }

  private static double[] misses(TimedDose dose, double[] days, int eggs) {
    double[] miss = new double[days.length * eggs];
    Meeting meeting = dose.meeting();
    for (int i = 0; i < days.length; i++) {
      double after = dose.day() - days[i];
      for (int e = 0; e < eggs; e++) {
        miss[i * eggs + e] = 1 - meeting.met(e, eggs, after);
      }
    }
    return miss;
  }

  int slots() {
    return miss.length;
  }

  /** What the doses already given leave to be met. */
  double[] start() {
    return already;
  }

  /** Adds a slot's dose: products of misses, into {@code into}. */
  void and(double[] before, int slot, double[] into) {
    double[] one = miss[slot];
    for (int i = 0; i < into.length; i++) {
      into[i] = before[i] * one[i];
    }
  }

  /** A vector of the right length. */
  double[] vector() {
    return new double[already.length];
  }

  /** Expected egg share. */
  double mean(double[] misses) {
    double sum = 0;
    int k = 0;
    for (double p : chance) {
      double met = 0;
      for (double w : weight) {
        met += w * (1 - misses[k++]);
      }
      sum += p * met;
    }
    return sum;
  }

  /** Expected egg share once one more slot's dose is added, without keeping the products. */
  double meanWith(double[] before, int slot) {
    double[] one = miss[slot];
    double sum = 0;
    int k = 0;
    for (double p : chance) {
      double met = 0;
      for (double w : weight) {
        met += w * (1 - before[k] * one[k]);
        k++;
      }
      sum += p * met;
    }
    return sum;
  }

  /** Egg share for each ovulation. */
  double[] byOvulation(double[] misses) {
    double[] share = new double[chance.length];
    int k = 0;
    for (int i = 0; i < share.length; i++) {
      double met = 0;
      for (double w : weight) {
        met += w * (1 - misses[k++]);
      }
      share[i] = met;
    }
    return share;
  }

  /**
   * Tenth percentile of the egg share over ovulations. Between two ovulations of the lattice the
   * share goes in a straight line, so that the percentile does not hang on where the lattice lies.
   */
  double p10(double[] misses) {
    double[] share = byOvulation(misses);
    double low = 0;
    double high = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (atMost(middle, share) < TENTH) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** Probability that the share is at most so large. */
  private double atMost(double most, double[] share) {
    int last = share.length - 1;
    double sum = 0;
    sum += share[0] <= most ? chance[0] / 2 : 0;
    sum += share[last] <= most ? chance[last] / 2 : 0;
    for (int i = 0; i < last; i++) {
      double less = Math.min(share[i], share[i + 1]);
      double more = Math.max(share[i], share[i + 1]);
      double part = more <= most ? 1 : less > most ? 0 : (most - less) / (more - less);
      sum += part * (chance[i] + chance[i + 1]) / 2;
    }
    return sum;
  }

  /** The median ovulation, in days on the axis. */
  double median() {
    double sum = 0;
    for (int i = 0; i < day.length; i++) {
      sum += chance[i];
      if (sum >= 0.5) {
        double part = chance[i] > 0 ? (sum - 0.5) / chance[i] : 0;
        return i == 0 ? day[i] : day[i] - part * (day[i] - day[i - 1]);
      }
    }
    return day[day.length - 1];
  }

  /** Time of each ovulation kept, in days on the axis. */
  double[] days() {
    return day;
  }

  /** Probability of each ovulation kept. */
  double[] chances() {
    return chance;
  }
}
