package io.github.tiderule.rules.fact;

/** Where the semen is placed. */
public enum Route implements Worded {
  NATURAL("natural"),
  VAGINAL("vaginal"),
  TRANSCERVICAL("transcervical"),
  SURGICAL("surgical");

  private final String word;

  Route(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
