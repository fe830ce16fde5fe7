package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Worded;

/** A sign a keeper can see. */
public enum SignKind implements Worded {
  STANDS("stands"),
  REFUSES("refuses"),
  FLAGS("flags"),
  VULVA_SOFTENS("vulva-softens"),
  BLEEDING_STOPS("bleeding-stops"),
  FOUL_DISCHARGE("foul-discharge"),
  UNWELL("unwell"),
  /** Drinks far more than usual. */
  THIRST("thirst"),
  /** Hard contractions of the belly. */
  STRAINING("straining"),
  GREEN_DISCHARGE("green-discharge"),
  WATERS_BROKEN("waters-broken"),
  PUP_BORN("pup-born"),
  COLLAPSE("collapse"),
  /** Trembles, walks stiffly, or has a fit. */
  TREMBLING("trembling");

  private final String word;

  SignKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
