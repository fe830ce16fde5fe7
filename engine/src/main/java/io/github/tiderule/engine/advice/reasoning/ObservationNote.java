package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * Why an observation is not taken simply as it was reported.
 *
 * @param observation its id
 * @param use {@code held}, {@code discounted}, {@code converted} or {@code set-aside}
 * @param sources keys of the source list
 */
public record ObservationNote(
    String observation, ObservationUse use, Sentence text, String rule, List<String> sources) {

  public ObservationNote {
    sources = List.copyOf(sources);
  }
}
