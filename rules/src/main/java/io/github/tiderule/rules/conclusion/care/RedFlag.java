package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** A sign that calls a vet, to be kept at hand before it is seen. */
public record RedFlag(RedFlagKind kind, Sentence words) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
