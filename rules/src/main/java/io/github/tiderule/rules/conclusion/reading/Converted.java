package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.List;

/** A result that was reported in another unit than the one it is reasoned with. */
public record Converted(String observation, String sentence) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of(observation);
  }
}
