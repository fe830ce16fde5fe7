package io.github.tiderule.rules.fact;

/** What a treatment was given for. */
public enum TreatmentPurpose implements Worded {
  /** To bring her into heat. */
  INDUCTION("induction"),
  /** To keep her from coming into heat. */
  SUPPRESSION("suppression"),
  /** For anything else. */
  OTHER("other");

  private final String word;

  TreatmentPurpose(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
