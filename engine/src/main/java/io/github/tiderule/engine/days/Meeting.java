package io.github.tiderule.engine.days;

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

  private final double[] weight;
  private final double[][] met;

  Meeting(double[] weight, double[][] met) {
    this.weight = weight;
    this.met = met;
  }

  static double dayAt(int index) {
    return FIRST + index / PER_DAY;
  }

  /** How many kinds of egg there are. */
  public int eggs() {
    return weight.length;
  }

  /** Share of her eggs that are of a kind; the shares sum to 1. */
  public double weight(int egg) {
    return weight[egg];
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
    for (int egg = 0; egg < weight.length; egg++) {
      sum += weight[egg] * met(egg, daysAfterOvulation);
    }
    return sum;
  }
}
