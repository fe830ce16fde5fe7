package io.github.tiderule.engine.timeline;

/**
 * Equally spaced times, in days after an anchor.
 *
 * @param first index of the first time; time of index i is i × step
 * @param count how many times, at least one
 * @param step days between two times, positive
 */
record Lattice(int first, int count, double step) {

  Lattice {
    if (count < 1 || !(step > 0)) {
      throw new IllegalArgumentException("no lattice of " + count + " times, " + step + " d apart");
    }
  }

  /** The lattice of multiples of {@code step} that covers a span. */
  static Lattice covering(double from, double to, double step) {
    int first = (int) Math.floor(from / step);
    int last = (int) Math.ceil(to / step);
    return new Lattice(first, last - first + 1, step);
  }

  /** The time at a place, counted from 0. */
  double at(int place) {
    return (first + place) * step;
  }
}
