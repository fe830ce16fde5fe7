package io.github.tiderule.cases.corpus;

/**
 * One thing that is not as expected.
 *
 * @param key of the expectation, as in {@code ovulation.median}
 */
public record Difference(String key, String expected, String actual) {

  @Override
  public String toString() {
    return "  " + key + "\n    expected: " + expected + "\n    actual:   " + actual;
  }
}
