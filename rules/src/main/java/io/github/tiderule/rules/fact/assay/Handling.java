package io.github.tiderule.rules.fact.assay;

import io.github.tiderule.rules.fact.Worded;

/** What happened to a sample between the vein and the reader. */
public enum Handling implements Worded {
  CHILLED_EARLY("chilled-early"),
  WARM_TRANSIT("warm-transit"),
  LATE_SPIN("late-spin"),
  HAEMOLYSED("haemolysed"),
  LIPAEMIC("lipaemic");

  private final String word;

  Handling(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
