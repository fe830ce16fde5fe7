package io.github.tiderule.engine.action;

import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;

/** The words in which a test is asked for. */
final class TestAsked {

  private TestAsked() {}

  /** As in {@code Test progesterone on Fri 19 Mar 08:00}, without a full stop. */
  static Sentence of(NextTest test, Season season) {
    Instant at = test.at().toInstant();
    if (test.kind() == TestKind.CYTOLOGY && Hours.between(season.asOf(), at) < 1) {
      return Sentence.of("Take a smear now");
    }
    return Sentence.of(template(test), season.clock().dayAndTime(at));
  }

  private static String template(NextTest test) {
    return switch (test.kind()) {
      case CYTOLOGY -> "Take a smear on {}";
      case LH -> "Test LH on {}";
      default ->
          test.also().isEmpty()
              ? "Test progesterone on {}"
              : "Test progesterone, and LH on the same blood, on {}";
    };
  }
}
