package io.github.tiderule.rules.condition.expression;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One test within a condition.
 *
 * @param text the test as the rule file writes it
 * @param reads the places of a match that it reads, in the order of the test's arguments
 * @param comparison its two sides, where it compares one value with another and nothing more
 */
public record Check(String text, List<Integer> reads, Test test, Optional<Comparison> comparison) {

  /** The compiled test. */
  @FunctionalInterface
  public interface Test {

    /**
     * Whether some values pass.
     *
     * @throws Exception if a value is missing that the test needs
     */
    boolean holds(Object... values) throws Exception;
  }

  /** A test; it is taken apart once. */
  public Check(String text, List<Integer> reads, Test test) {
    this(text, reads, test, Comparison.of(text));
  }

  public Check {
    reads = List.copyOf(reads);
  }

  /** Whether it holds for a match; a test that cannot be made does not hold. */
  public boolean holds(@Nullable Object[] match) {
    Object[] values = new Object[reads.size()];
    for (int i = 0; i < values.length; i++) {
      @Nullable Object value = match[reads.get(i)];
      if (value == null) {
        return false;
      }
      values[i] = value;
    }
    try {
      return test.holds(values);
    } catch (Exception e) {
      return false;
    }
  }
}
