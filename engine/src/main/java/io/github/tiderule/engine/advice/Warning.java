package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A caution.
 *
 * @param sources keys of the source list
 */
public record Warning(CautionLevel level, Sentence text, String rule, List<String> sources) {

  public Warning {
    sources = List.copyOf(sources);
  }
}
