package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Worded;

/** How many neutrophils a vaginal smear shows. */
public enum Neutrophils implements Worded {
  NONE("none"),
  FEW("few"),
  MANY("many");

  private final String word;

  Neutrophils(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
