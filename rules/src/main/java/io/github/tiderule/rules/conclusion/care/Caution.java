package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** A caution shown with every plan it belongs to. */
public record Caution(CautionLevel level, List<String> observations, Sentence words)
    implements Conclusion {

  public Caution {
    observations = List.copyOf(observations);
  }

  /** A caution that rests on some observations, or on none. */
  public static Caution of(CautionLevel level, Sentence words, String... observations) {
    return new Caution(level, List.of(observations), words);
  }
}
