package io.github.tiderule.engine.timeline;

/** Interpolation from one lattice to a finer one that lies within it. Immutable. */
final class Interpolation {

  private final int[] place;
  private final double[] part;

  private Interpolation(int[] place, double[] part) {
    this.place = place;
    this.part = part;
  }

  /**
   * From one lattice to another.
   *
   * @param to at least one step of {@code from} inside it at either end
   */
  static Interpolation of(Lattice from, Lattice to) {
    int[] place = new int[to.count()];
    double[] part = new double[to.count()];
    for (int i = 0; i < place.length; i++) {
      double at = to.at(i) / from.step() - from.first();
      place[i] = Math.min(Math.max((int) Math.floor(at), 1), from.count() - 3);
      part[i] = at - place[i];
    }
    return new Interpolation(place, part);
  }

  /** By the cubic through the four nearest values. */
  double[] cubic(double[] values) {
    double[] out = new double[place.length];
    for (int i = 0; i < out.length; i++) {
      int at = place[i];
      double t = part[i];
      out[i] =
          -t * (t - 1) * (t - 2) / 6 * values[at - 1]
              + (t + 1) * (t - 1) * (t - 2) / 2 * values[at]
              - (t + 1) * t * (t - 2) / 2 * values[at + 1]
              + (t + 1) * t * (t - 1) / 6 * values[at + 2];
    }
    return out;
  }

  /** By straight lines. */
  double[] linear(double[] values) {
    double[] out = new double[place.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = values[place[i]] + part[i] * (values[place[i] + 1] - values[place[i]]);
    }
    return out;
  }
}
