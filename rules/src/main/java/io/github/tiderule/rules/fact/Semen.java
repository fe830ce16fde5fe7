package io.github.tiderule.rules.fact;

/** The semen she is bred with. */
public enum Semen implements Worded {
  NATURAL("natural"),
  FRESH("fresh"),
  CHILLED("chilled"),
  FROZEN("frozen");

  private final String word;

  Semen(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
