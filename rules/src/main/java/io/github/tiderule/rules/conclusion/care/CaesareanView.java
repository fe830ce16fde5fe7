package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;

/** What is to be said of a day for a planned caesarean. */
public record CaesareanView(LocalDate day, CaesareanVerdict verdict, Sentence words)
    implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
