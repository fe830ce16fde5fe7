package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.fact.Worded;

/** How a check before the season stands. */
public enum CheckState implements Worded {
  DUE("due"),
  ASK("ask"),
  DONE("done");

  private final String word;

  CheckState(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
