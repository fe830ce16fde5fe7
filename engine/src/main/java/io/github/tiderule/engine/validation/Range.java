package io.github.tiderule.engine.validation;

/**
 * The numbers a field may hold.
 *
 * @param above whether {@code least} itself is outside
 * @param unit the unit in words, for messages; may be empty
 */
public record Range(double least, boolean above, double most, String unit) {

  /** From {@code least} to {@code most}, both included. */
  public static Range of(double least, double most, String unit) {
    return new Range(least, false, most, unit);
  }

  /** From above zero to {@code most}. */
  public static Range positive(double most, String unit) {
    return new Range(0, true, most, unit);
  }

  boolean contains(double value) {
    return value <= most && (above ? value > least : value >= least);
  }

  String words() {
    String span =
        above
            ? "above " + plain(least) + ", up to " + plain(most)
            : plain(least) + " to " + plain(most);
    return unit.isEmpty() ? span : span + " " + unit;
  }

  /** A number without a fraction it does not have. */
  static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e6
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
