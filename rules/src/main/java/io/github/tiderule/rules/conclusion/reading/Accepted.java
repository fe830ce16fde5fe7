package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** An observation that is used as evidence. */
public record Accepted(String observation, Sentence words) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of(observation);
  }
}
