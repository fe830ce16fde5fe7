package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A caution.
 *
 * @param level {@code stop}, {@code vet} or {@code care}
 * @param sources keys of the source list
 */
public record Warning(String level, Sentence text, String rule, List<String> sources) {

  public Warning {
    sources = List.copyOf(sources);
  }
}
