package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Worded;

/** What vaginoscopy shows of the vaginal folds, in the order a season runs through. */
public enum Folds implements Worded {
  SWOLLEN("swollen"),
  SHRINKING("shrinking"),
  ANGULAR("angular"),
  ROUNDING("rounding"),
  FLAT("flat");

  private final String word;

  Folds(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
