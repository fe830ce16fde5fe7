package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.List;

/** A caution shown with every plan it belongs to. */
public record Caution(CautionLevel level, List<String> observations, String sentence)
    implements Conclusion {

  public Caution {
    observations = List.copyOf(observations);
  }

  /** A caution that rests on some observations, or on none. */
  public static Caution of(CautionLevel level, String sentence, String... observations) {
    return new Caution(level, List.of(observations), sentence);
  }
}
