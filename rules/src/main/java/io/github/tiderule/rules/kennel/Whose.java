package io.github.tiderule.rules.kennel;

import io.github.tiderule.rules.fact.Worded;

/** Whom a test or a check is about. */
public enum Whose implements Worded {
  FEMALE("female"),
  STUD("stud"),
  BOTH("both");

  private final String word;

  Whose(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
