package io.github.tiderule.rules.fact.assay;

import io.github.tiderule.rules.fact.Worded;

/** What was measured. */
public enum Specimen implements Worded {
  SERUM("serum"),
  PLASMA("plasma"),
  WHOLE_BLOOD("whole-blood");

  private final String word;

  Specimen(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
