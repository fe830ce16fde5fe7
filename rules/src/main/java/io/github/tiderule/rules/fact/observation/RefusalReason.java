package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Worded;

/** Why she refused, as far as anybody found out. */
public enum RefusalReason implements Worded {
  /** A stricture, a band or a fold in vestibule or vagina that was felt. */
  STRICTURE("stricture"),
  /** She cries, snaps or sits down when touched. */
  PAIN("pain"),
  FEAR("fear"),
  /** Not ready yet, or past it. */
  WRONG_DAY("wrong-day"),
  /** The male would not, or could not. */
  MALE("male");

  private final String word;

  RefusalReason(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
