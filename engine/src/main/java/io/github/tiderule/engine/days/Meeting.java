package io.github.tiderule.engine.days;

import java.util.List;

/**
 * For each kind of egg, the probability that a dose meets it, by days from ovulation to the dose.
 *
 * <p>Tabulated every eighth of a day from 12 days before ovulation to 14 after, straight lines
 * between; nothing is met outside.
 */
public final class Meeting {

  private static final double FIRST = -12;
  private static final double PER_DAY = 8;
  static final int SIZE = 26 * 8 + 1;

  private final List<EggKind> kinds;
  private final double[][] met;

  Meeting(List<EggKind> kinds, double[][] met) {
    this.kinds = kinds;
    this.met = met;
  }

  static double dayAt(int index) {
    return FIRST + index / PER_DAY;
  }

  /** How many kinds of egg there are. */
  int eggs() {
    return kinds.size();
  }

  /** Share of her eggs that are of a kind; the shares sum to 1. */
  double weight(int egg) {
    return kinds.get(egg).weight();
  }

  /** The kinds of egg, in the order they are counted in. */
  public List<EggKind> kinds() {
    return kinds;
  }

  /** Probability that a dose so many days after ovulation meets an egg of a kind, 0–1. */
  public double met(int egg, double daysAfterOvulation) {
    double place = (daysAfterOvulation - FIRST) * PER_DAY;
    if (!(place >= 0) || place >= SIZE - 1) {
      return 0;
    }
    int i = (int) place;
    double part = place - i;
    return met[egg][i] + part * (met[egg][i + 1] - met[egg][i]);
  }

  /** Share of her eggs that one dose meets, 0–1. */
  public double share(double daysAfterOvulation) {
    double sum = 0;
    for (int egg = 0; egg < met.length; egg++) {
      sum += kinds.get(egg).weight() * met(egg, daysAfterOvulation);
    }
    return sum;
  }

  /**
   * Probability that a dose meets an egg of a kind of another list, which has the schools of this
   * list or fewer or more.
   *
   * @param egg place in that list
   * @param eggs length of that list
   */
  double met(int egg, int eggs, double daysAfterOvulation) {
    if (eggs >= met.length) {
      return met(egg % met.length, daysAfterOvulation);
    }
    double sum = 0;
    double of = 0;
    for (int same = egg; same < met.length; same += eggs) {
      sum += kinds.get(same).weight() * met(same, daysAfterOvulation);
      of += kinds.get(same).weight();
    }
    return sum / of;
  }
}
