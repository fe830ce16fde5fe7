package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.fact.Worded;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One thing that a season's record cannot hold.
 *
 * @param field where it stands in what was checked, such as {@code observations[3].value}; empty
 *     for the whole of it
 * @param code what is wrong, for programs
 * @param value what stands there; null where nothing does, or no single value is wrong
 * @param limits what a number, a length or a count may be; null where there are no such limits
 * @param message what is wrong, for people, naming the field and its value
 * @param hint what may have been meant; null where nothing better can be said than of the code
 */
public record Violation(
    String field,
    Code code,
    @Nullable Object value,
    @Nullable Range limits,
    String message,
    @Nullable String hint) {

  /** The kinds of violations. Words are stable, and the same as of a refused cycle file. */
  public enum Code implements Worded {
    /** What must be there is not. */
    MISSING_FIELD("missing-field"),
    /** A list with more entries than are taken. */
    TOO_MANY("too-many"),
    /** Not a finite number. */
    NOT_A_NUMBER("not-a-number"),
    /** A number below zero. */
    NEGATIVE_VALUE("negative-value"),
    /** A number no female or sample can have. */
    OUT_OF_RANGE("out-of-range"),
    /** A date far from the season. */
    IMPLAUSIBLE_DATE("implausible-date"),
    /** Two values that must follow each other do not. */
    WRONG_ORDER("wrong-order"),
    /** Two statements that cannot both be true. */
    CONTRADICTION("contradiction"),
    /** Not a zone of the tz database. */
    UNKNOWN_ZONE("unknown-zone"),
    /** A word that says nothing of what it stands for. */
    UNKNOWN_WORD("unknown-word"),
    /** Two observations with one id. */
    DUPLICATE_ID("duplicate-id"),
    /** A text without a visible character. */
    EMPTY_TEXT("empty-text"),
    /** A text longer than is taken. */
    TOO_LONG("too-long"),
    /** A control or direction character in a text. */
    ILLEGAL_CHARACTER("illegal-character");

    private final String word;

    Code(String word) {
      this.word = word;
    }

    @Override
    public String word() {
      return word;
    }
  }

  /** A violation that neither limits nor a hint say more of. */
  static Violation of(String field, Code code, @Nullable Object value, String message) {
    return new Violation(field, code, value, null, message, null);
  }

  /**
   * Why a number cannot stand in a field; empty where it can.
   *
   * @param limits the numbers the field may hold
   * @param shown the number as messages show it
   */
  public static Optional<Violation> outside(Range limits, String name, double value, String shown) {
    if (!Double.isFinite(value)) {
      return outside(
          limits, Code.NOT_A_NUMBER, name, value, name + " is " + shown + ", not a finite number");
    }
    if (value < 0 && limits.least() >= 0) {
      return outside(
          limits, Code.NEGATIVE_VALUE, name, value, name + " is " + shown + ", below zero");
    }
    return limits.contains(value)
        ? Optional.empty()
        : outside(
            limits,
            Code.OUT_OF_RANGE,
            name,
            value,
            name + " is " + shown + "; it must be " + limits.words());
  }

  private static Optional<Violation> outside(
      Range limits, Code code, String name, double value, String message) {
    return Optional.of(new Violation(name, code, value, limits, message, null));
  }

  /** The same, with what may have been meant. */
  public Violation hint(String meant) {
    return new Violation(field, code, value, limits, message, meant);
  }

  /** The same, seen from what holds the thing that was checked. */
  Violation within(String place) {
    String whole = place.isEmpty() || field.isEmpty() ? place + field : place + "." + field;
    return new Violation(whole, code, value, limits, message, hint);
  }
}
