package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A test that may be made on the blood drawn for another.
 *
 * @param drawn what the blood is drawn for
 * @param also what else it can be tested for
 */
public record SameBlood(TestKind drawn, TestKind also, List<String> observations, Sentence words)
    implements Conclusion {

  public SameBlood {
    observations = List.copyOf(observations);
  }
}
