package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * The trade's interval for the next test.
 *
 * @param hoursAfter hours after the last sample (or after now, when there is none), not negative
 */
public record TestDue(TestKind kind, double hoursAfter, List<String> observations, Sentence words)
    implements Conclusion {

  public TestDue {
    observations = List.copyOf(observations);
  }

  /** A test that is due some hours after the observations it rests on. */
  public static TestDue of(
      TestKind kind, double hoursAfter, Sentence words, String... observations) {
    return new TestDue(kind, hoursAfter, List.of(observations), words);
  }
}
