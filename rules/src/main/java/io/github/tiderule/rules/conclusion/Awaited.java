package io.github.tiderule.rules.conclusion;

import java.util.List;

/**
 * A rule that would speak if one more thing were known.
 *
 * @param rule the rule that waits
 * @param missing what it waits for
 */
public record Awaited(String rule, String missing) implements Conclusion {

  @Override
  public List<String> observations() {
    return List.of();
  }

  @Override
  public String sentence() {
    return rule + " waits for " + missing;
  }
}
