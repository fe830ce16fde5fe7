package io.github.tiderule.engine.validation;

import java.util.Optional;

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

  /**
   * Why a number cannot stand in a field; empty where it can.
   *
   * @param shown the number as messages show it
   */
  public Optional<Violation> violation(String name, double value, String shown) {
    if (!Double.isFinite(value)) {
      return Optional.of(
          outside(
              Violation.Code.NOT_A_NUMBER,
              name,
              value,
              name + " is " + shown + ", not a finite number"));
    }
    if (value < 0 && least >= 0) {
      return Optional.of(
          outside(
              Violation.Code.NEGATIVE_VALUE, name, value, name + " is " + shown + ", below zero"));
    }
    return contains(value)
        ? Optional.empty()
        : Optional.of(
            outside(
                Violation.Code.OUT_OF_RANGE,
                name,
                value,
                name + " is " + shown + "; it must be " + words()));
  }

  private Violation outside(Violation.Code code, String name, double value, String message) {
    return new Violation(name, code, value, this, message, null);
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
