package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.fact.Worded;

/** What the plan thinks of a day. */
public enum Verdict implements Worded {
  RECOMMENDED("recommended"),
  POSSIBLE("possible"),
  AVOID("avoid");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
