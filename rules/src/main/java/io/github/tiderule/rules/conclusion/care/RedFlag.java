package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.List;

/** A sign that calls a vet, to be kept at hand before it is seen. */
public record RedFlag(RedFlagKind kind, String sentence) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
