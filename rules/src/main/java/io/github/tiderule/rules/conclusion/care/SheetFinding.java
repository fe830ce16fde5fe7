package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** What the semen in hand shows, and what follows from it. */
public record SheetFinding(CautionLevel level, Sentence words) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
