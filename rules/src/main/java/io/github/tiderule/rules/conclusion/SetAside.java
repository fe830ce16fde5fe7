package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** An accepted observation that the timeline must not use. */
public record SetAside(String observation, Sentence words) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of(observation);
  }
}
