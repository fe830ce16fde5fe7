package io.github.tiderule.rules.conclusion;

import java.util.List;

/** No further test of a kind would change anything. */
public record TestingDone(TestKind kind, List<String> observations, String sentence)
    implements Conclusion {

  public TestingDone {
    observations = List.copyOf(observations);
  }

  /** Testing of a kind ends because of some observations, or of none. */
  public static TestingDone of(TestKind kind, String sentence, String... observations) {
    return new TestingDone(kind, List.of(observations), sentence);
  }
}
