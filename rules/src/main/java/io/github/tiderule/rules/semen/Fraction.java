package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.Worded;

/** The part of an ejaculate that a tube holds, in the order a male gives them. */
public enum Fraction implements Worded {
  PRESPERM("presperm", false),
  SPERM_RICH("sperm-rich", true),
  PROSTATIC("prostatic", false),
  WHOLE("whole", true);

  private final String word;
  private final boolean bearsSperm;

  Fraction(String word, boolean bearsSperm) {
    this.word = word;
    this.bearsSperm = bearsSperm;
  }

  @Override
  public String word() {
    return word;
  }

  /** Whether the sperm are looked for in it. */
  public boolean bearsSperm() {
    return bearsSperm;
  }
}
