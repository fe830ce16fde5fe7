package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.conclusion.TestKind;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * The test to make next.
 *
 * @param at when to draw it
 * @param resultAt when its result should be there
 * @param gain expected egg share of the best plan with its result, less that without it
 * @param because ids of the rules that ask for it
 * @param also what else the same blood is worth testing for; may be empty
 */
public record NextTest(
    TestKind kind,
    OffsetDateTime at,
    OffsetDateTime resultAt,
    double gain,
    List<String> because,
    List<TestKind> also) {

  /** A test of one kind. */
  public NextTest(
      TestKind kind,
      OffsetDateTime at,
      OffsetDateTime resultAt,
      double gain,
      List<String> because) {
    this(kind, at, resultAt, gain, because, List.of());
  }

  public NextTest {
    also = List.copyOf(also);
    because = List.copyOf(because);
  }
}
