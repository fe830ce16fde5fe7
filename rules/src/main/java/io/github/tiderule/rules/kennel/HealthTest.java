package io.github.tiderule.rules.kennel;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A test one of the two dogs had.
 *
 * @param whose the female's or the stud's, never both
 * @param on not after the moment of the advice
 * @param result for an infection negative, positive or unknown
 * @param condition what was looked for in words, such as a gene, at most 120 characters, if said
 */
public record HealthTest(
    Whose whose,
    HealthTestKind kind,
    LocalDate on,
    HealthTestResult result,
    @Nullable String condition) {

  /** A test that names no condition. */
  public static HealthTest of(
      Whose whose, HealthTestKind kind, LocalDate on, HealthTestResult result) {
    return new HealthTest(whose, kind, on, result, null);
  }

  /**
   * With what was looked for.
   *
   * @param words such as a gene, at most 120 characters
   */
  public HealthTest condition(String words) {
    return new HealthTest(whose, kind, on, result, words);
  }
}
