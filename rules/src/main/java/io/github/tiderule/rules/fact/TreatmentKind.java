package io.github.tiderule.rules.fact;

/** A treatment that changes what hormone values mean. */
public enum TreatmentKind implements Worded {
  PROGESTOGEN("progestogen"),
  GLUCOCORTICOID("glucocorticoid"),
  DESLORELIN("deslorelin"),
  OTHER("other");

  private final String word;

  TreatmentKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
