package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** A caution shown with every plan it belongs to. */
public record Caution(CautionLevel level, About about, List<String> observations, Sentence words)
    implements Conclusion {

  public Caution {
    observations = List.copyOf(observations);
  }

  /** A caution on nothing that more hangs on than its words. */
  public Caution(CautionLevel level, List<String> observations, Sentence words) {
    this(level, About.OTHER, observations, words);
  }

  /** A caution that rests on some observations, or on none. */
  public static Caution of(CautionLevel level, Sentence words, String... observations) {
    return new Caution(level, List.of(observations), words);
  }

  /** A caution on what a dose holds. */
  public static Caution ofDose(CautionLevel level, Sentence words) {
    return new Caution(level, About.DOSE, List.of(), words);
  }

  /** A caution that semen is not to be used. */
  public static Caution unusable(CautionLevel level, Sentence words) {
    return new Caution(level, About.UNUSABLE_DOSE, List.of(), words);
  }

  /** A caution that leads the answer for what it is about. */
  public static Caution leading(
      CautionLevel level, About about, Sentence words, String... observations) {
    return new Caution(level, about, List.of(observations), words);
  }
}
