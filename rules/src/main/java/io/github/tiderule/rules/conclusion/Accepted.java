package io.github.tiderule.rules.conclusion;

import java.util.List;

/** An observation that is used as evidence. */
public record Accepted(String observation, String sentence) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of(observation);
  }
}
