package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** What the semen in hand shows, and what follows from it. */
public record SheetFinding(CautionLevel level, About about, Sentence words) implements Conclusion {

  /** A finding that leaves the semen usable. */
  public SheetFinding(CautionLevel level, Sentence words) {
    this(level, About.DOSE, words);
  }

  @Override
  public List<String> observations() {
    return List.of();
  }
}
