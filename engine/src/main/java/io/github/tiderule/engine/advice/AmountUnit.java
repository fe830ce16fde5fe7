package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.fact.Worded;

/** What an {@link Amount} is counted in. */
public enum AmountUnit implements Worded {
  /** Millions of sperm. */
  MILLION("million"),
  /** Millilitres. */
  MILLILITRES("mL");

  private final String word;

  AmountUnit(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
