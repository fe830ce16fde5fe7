package io.github.tiderule.rules.fact;

/** How a treatment is given, which says how long it acts. */
public enum TreatmentForm implements Worded {
  SHORT_ACTING("short-acting"),
  LONG_ACTING("long-acting"),
  IMPLANT("implant");

  private final String word;

  TreatmentForm(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
