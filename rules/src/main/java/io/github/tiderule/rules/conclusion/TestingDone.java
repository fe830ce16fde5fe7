package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** No further test of a kind would change anything. */
public record TestingDone(TestKind kind, List<String> observations, Sentence words)
    implements Conclusion {

  public TestingDone {
    observations = List.copyOf(observations);
  }

  /** Testing of a kind ends because of some observations, or of none. */
  public static TestingDone of(TestKind kind, Sentence words, String... observations) {
    return new TestingDone(kind, List.of(observations), words);
  }
}
