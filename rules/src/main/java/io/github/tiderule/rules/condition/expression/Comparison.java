package io.github.tiderule.rules.condition.expression;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A test that compares one value with another.
 *
 * @param left what stands left of the sign
 * @param right what stands right of it
 */
public record Comparison(Tokens left, Tokens right) {

  /** The signs of comparisons. */
  public static final List<String> SIGNS =
      List.of("==", "!=", ">=", "<=", ">", "<", "in", "contains", "not", "matches");

  /** The comparison a test makes; empty where it makes none, or more than one. */
  public static Optional<Comparison> of(String test) {
    Tokens tokens = Tokens.ofTest(test);
    List<Tokens> sides = tokens.cut(SIGNS);
    return sides.size() == 2 && tokens.first(List.of("||", "&&")).isEmpty()
        ? Optional.of(new Comparison(sides.get(0), sides.get(1)))
        : Optional.empty();
  }

  /**
   * How far the two sides are apart, as a share of the greater of the two numbers; infinite where
   * no numbers are compared.
   *
   * @param fact whose own properties are named plainly
   * @param names values of the names that begin with a dollar sign
   * @param imports classes by simple name
   */
  public double gap(
      Object fact, Map<String, @Nullable Object> names, Map<String, Class<?>> imports) {
    try {
      @Nullable Object one = Expression.value(left.again(), fact, names, imports);
      @Nullable Object other = Expression.value(right.again(), fact, names, imports);
      if (one instanceof Number first && other instanceof Number second) {
        double greatest = Math.max(Math.abs(first.doubleValue()), Math.abs(second.doubleValue()));
        double gap = Math.abs(first.doubleValue() - second.doubleValue()) / greatest;
        return gap >= 0 ? gap : Double.POSITIVE_INFINITY;
      }
    } catch (Expression.MissingValue | IllegalArgumentException e) {
      // nothing to compare
    }
    return Double.POSITIVE_INFINITY;
  }
}
