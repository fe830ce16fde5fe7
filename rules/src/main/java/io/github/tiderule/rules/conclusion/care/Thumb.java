package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.fact.Worded;

/** The rules of thumb by which days are counted. */
public enum Thumb implements Worded {
  /** So many days after the first value past a level. */
  FIRST_VALUE("first-value"),
  /** Fixed days after first blood. */
  FIXED_DAYS("fixed-days"),
  /** So many days from mating to whelping. */
  WHELPING("whelping");

  private final String word;

  Thumb(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
