package io.github.tiderule.rules.fact.semen;

import io.github.tiderule.rules.fact.Worded;

/**
 * What a fresh ejaculate looks like, from dense to empty, then by its colour (words of density:
 * thomas-2013).
 */
public enum SemenColour implements Worded {
  CREAMY("creamy"),
  MILKY("full-milk"),
  SKIMMED("skim-milk"),
  TRANSLUCENT("translucent"),
  CLEAR("clear"),
  YELLOW("yellow"),
  PINK("pink"),
  RED("red"),
  GREEN("green-grey");

  private final String word;

  SemenColour(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
