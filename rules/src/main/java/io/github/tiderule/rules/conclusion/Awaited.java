package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * A rule that would speak if one more thing were known.
 *
 * @param rule the rule that waits
 * @param missing what it waits for
 */
public record Awaited(String rule, Sentence missing) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }

  @Override
  public Sentence words() {
    return Sentence.of("{} waits for {}", Part.quote(rule), missing);
  }
}
