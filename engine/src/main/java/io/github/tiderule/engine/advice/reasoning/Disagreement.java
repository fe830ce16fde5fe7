package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * Something that schools disagree about and that matters for this female.
 *
 * @param about the topic in words
 * @param positions at least two, by rule
 * @param leansTo which way the plan leans
 * @param why the reason for it
 */
public record Disagreement(String about, List<Position> positions, Sentence leansTo, Sentence why) {

  public Disagreement {
    positions = List.copyOf(positions);
  }

  /**
   * What one school holds.
   *
   * @param sources keys of the source list
   */
  public record Position(String rule, Sentence text, List<String> sources) {

    public Position {
      sources = List.copyOf(sources);
    }
  }
}
