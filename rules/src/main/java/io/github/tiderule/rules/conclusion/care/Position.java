package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.List;

/** What one school holds about a topic on which schools disagree. */
public record Position(Topic about, String sentence) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
