package io.github.tiderule.rules.fact.assay;

import io.github.tiderule.rules.fact.Worded;

/** The sign a laboratory prints before a value outside its reportable range. */
public enum Comparator implements Worded {
  BELOW("<"),
  ABOVE(">");

  private final String word;

  Comparator(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
