package io.github.tiderule.rules.fact.semen;

import io.github.tiderule.rules.fact.Worded;

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

  /**
   * The usual route for semen when nobody says: thawed semen goes into the uterus (thomassen-2006,
   * lindeforsberg-1999), other shipped or collected semen into the vagina (common practice).
   */
  public static Route usualFor(Semen semen) {
    return switch (semen) {
      case NATURAL -> NATURAL;
      case FRESH, CHILLED -> VAGINAL;
      case FROZEN -> TRANSCERVICAL;
    };
  }

  @Override
  public String word() {
    return word;
  }
}
