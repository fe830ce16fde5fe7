package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** What one school holds about a topic on which schools disagree. */
public record Position(Topic about, Sentence words) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
