package io.github.tiderule.rules.fact;

/** A sign a keeper can see. */
public enum SignKind implements Worded {
  STANDS("stands"),
  REFUSES("refuses"),
  FLAGS("flags"),
  VULVA_SOFTENS("vulva-softens"),
  BLEEDING_STOPS("bleeding-stops"),
  FOUL_DISCHARGE("foul-discharge"),
  UNWELL("unwell");

  private final String word;

  SignKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
