package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** A result that was reported in another unit than the one it is reasoned with. */
public record Converted(String observation, Sentence words) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of(observation);
  }
}
