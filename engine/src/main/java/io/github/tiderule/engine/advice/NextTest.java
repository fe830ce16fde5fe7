package io.github.tiderule.engine.advice;

import java.time.OffsetDateTime;
import java.util.List;

/**
 * The test to make next.
 *
 * @param kind {@code progesterone}, {@code lh} or {@code cytology}
 * @param at when to draw it
 * @param resultAt when its result should be there
 * @param gain expected egg share of the best plan with its result, less that without it
 * @param because ids of the rules that ask for it
 */
public record NextTest(
    String kind, OffsetDateTime at, OffsetDateTime resultAt, double gain, List<String> because) {

  public NextTest {
    because = List.copyOf(because);
  }
}
