package io.github.tiderule.rules.fact;

/** How well the day of first blood is known. */
public enum Certainty implements Worded {
  SEEN("seen"),
  ESTIMATED("estimated"),
  UNKNOWN("unknown");

  private final String word;

  Certainty(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
