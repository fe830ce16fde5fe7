package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * Something to ask the keeper.
 *
 * @param about the observation's id, or the name of another field: {@link #FIRST_BLOOD}, {@link
 *     #EARLIER_CYCLES}, {@link #BORN_ON}, {@link #LITTERS_WHELPED}
 * @param words the question in words
 * @param readings what each answer would mean; empty when the question is open
 */
public record Question(String about, Sentence words, List<PossibleReading> readings)
    implements Conclusion {

  /** A question about the day of first blood. */
  public static final String FIRST_BLOOD = "firstBlood";

  /** A question about her earlier seasons. */
  public static final String EARLIER_CYCLES = "earlierCycles";

  /** A question about her day of birth. */
  public static final String BORN_ON = "bornOn";

  /** A question about how many litters she whelped. */
  public static final String LITTERS_WHELPED = "littersWhelped";

  public Question {
    readings = List.copyOf(readings);
  }

  @Override
  public List<String> observations() {
    return List.of(about);
  }
}
