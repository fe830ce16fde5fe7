package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * Which way the plan leans where schools disagree.
 *
 * @param words what the plan does
 * @param why the reason for it, without a full stop
 */
public record Leaning(Topic about, Sentence words, Sentence why) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }
}
