package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A test that stands before an act that cannot be undone: before it nothing is thawed, ordered,
 * booked or travelled for.
 *
 * @param words what it decides, to follow the test and a colon
 * @param then what follows from either result, whole sentences
 */
public record TestFirst(
    TestKind test, List<String> observations, Sentence words, List<Sentence> then)
    implements Conclusion {

  public TestFirst {
    observations = List.copyOf(observations);
    then = List.copyOf(then);
  }
}
