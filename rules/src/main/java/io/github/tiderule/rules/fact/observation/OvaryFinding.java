package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Worded;

/** What ultrasound shows of the ovaries. */
public enum OvaryFinding implements Worded {
  FOLLICLES("follicles"),
  OVULATED("ovulated");

  private final String word;

  OvaryFinding(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
