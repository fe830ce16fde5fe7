package io.github.tiderule.engine.insemination;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.sentence.Sentence;

/**
 * A quantity known to lie between two numbers; both are the same where it was measured. Results are
 * rounded to twelve significant digits, so that products of round numbers are round.
 *
 * @param least not negative, finite
 * @param most finite
 */
public record Span(double least, double most) {

  private static final int DIGITS = 12;

  /**
   * @throws IllegalArgumentException if the ends are no numbers, negative or out of order
   */
  public Span {
    if (!(least >= 0) || !(most >= least) || Double.isInfinite(most)) {
      throw new IllegalArgumentException("not a span: " + least + " to " + most);
    }
  }

  /** A measured quantity. */
  static Span of(double value) {
    return new Span(value, value);
  }

  /** Whether it was measured. */
  boolean exact() {
    return least == most;
  }

  /** The sum with another. */
  Span plus(Span other) {
    return rounded(least + other.least, most + other.most);
  }

  /** The product with a factor that is not negative. */
  public Span times(double factor) {
    return rounded(least * factor, most * factor);
  }

  /** The share of it that so many in a hundred are. */
  Span percent(double percent) {
    return times(percent / 100);
  }

  /** The quotient by a number above 0. */
  Span over(double divisor) {
    return rounded(least / divisor, most / divisor);
  }

  /** What is left when an amount is taken away; not below 0. */
  Span less(double amount) {
    return rounded(Math.max(0, least - amount), Math.max(0, most - amount));
  }

  /** How many whole parts of a size above 0 it surely holds. */
  int wholeAtLeast(double size) {
    return whole(least, size);
  }

  /** How many whole parts of a size above 0 it may hold. */
  int wholeAtMost(double size) {
    return whole(most, size);
  }

  private static int whole(double amount, double size) {
    return (int) Math.min(Integer.MAX_VALUE, Math.floor(Digits.significant(amount / size, DIGITS)));
  }

  private static Span rounded(double least, double most) {
    return new Span(Digits.significant(least, DIGITS), Digits.significant(most, DIGITS));
  }

  /** Its numbers, three significant digits: {@code 28.8}, {@code 500 to 1000}. */
  Sentence figures() {
    return Amount.figures(least, most);
  }
}
