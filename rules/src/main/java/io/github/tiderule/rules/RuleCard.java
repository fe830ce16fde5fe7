package io.github.tiderule.rules;

import java.util.List;

/**
 * What a rule says about itself.
 *
 * @param id its name, never used again once retired
 * @param title the finding in a few words
 * @param looksAt what it looks at
 * @param concludes what it concludes
 * @param sources keys of the source list, at least one
 * @param why why the trade holds this
 * @param parameters ids of the parameters its conditions name
 */
public record RuleCard(
    Stage stage,
    String id,
    String title,
    String looksAt,
    String concludes,
    List<String> sources,
    String why,
    List<String> parameters) {

  /** The rule as one sentence, with its full stop. */
  public String sentence() {
    return "Given " + looksAt + ", " + concludes + ".";
  }
}
