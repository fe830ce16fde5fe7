package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.Worded;

/** What frozen semen is kept in. */
public enum FrozenUnit implements Worded {
  STRAW("straw"),
  VIAL("vial"),
  PELLET("pellet");

  private final String word;

  FrozenUnit(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
