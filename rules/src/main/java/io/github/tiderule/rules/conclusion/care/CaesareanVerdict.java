package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.fact.Worded;

/** What the trade holds of a day for a planned caesarean; a vet decides. */
public enum CaesareanVerdict implements Worded {
  /** Pups would not be ready. */
  AVOID("avoid"),
  /** Only where a vet finds her ready. */
  EDGE("edge"),
  PREFERRED("preferred"),
  POSSIBLE("possible"),
  LATE("late");

  private final String word;

  CaesareanVerdict(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
