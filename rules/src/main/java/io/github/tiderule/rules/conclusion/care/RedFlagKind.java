package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.fact.Worded;

/** When a red flag matters. */
public enum RedFlagKind implements Worded {
  PREGNANCY("pregnancy"),
  WHELPING("whelping"),
  AFTER_WHELPING("after-whelping");

  private final String word;

  RedFlagKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
