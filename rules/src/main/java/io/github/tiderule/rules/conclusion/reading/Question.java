package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * Something to ask the keeper.
 *
 * @param about the observation's id
 * @param words the question in words
 * @param readings what each answer would mean; empty when the question is open
 */
public record Question(String about, Sentence words, List<PossibleReading> readings)
    implements Conclusion {

  public Question {
    readings = List.copyOf(readings);
  }

  @Override
  public List<String> observations() {
    return List.of(about);
  }
}
