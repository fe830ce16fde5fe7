package io.github.tiderule.rules.fact;

/** What a fresh ejaculate looks like. */
public enum SemenColour implements Worded {
  CREAMY("creamy"),
  MILKY("milky"),
  SKIMMED("skimmed"),
  TRANSLUCENT("translucent"),
  CLEAR("clear"),
  YELLOW("yellow"),
  PINK("pink"),
  GREEN("green");

  private final String word;

  SemenColour(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
