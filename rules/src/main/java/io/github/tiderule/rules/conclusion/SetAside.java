package io.github.tiderule.rules.conclusion;

import java.util.List;

/** An accepted observation that the timeline must not use. */
public record SetAside(String observation, String sentence) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of(observation);
  }
}
