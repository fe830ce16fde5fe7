package io.github.tiderule.rules.fact.assay;

import io.github.tiderule.rules.fact.Worded;

/** What the blood was drawn into. */
public enum Tube implements Worded {
  PLAIN("plain"),
  GEL("gel"),
  HEPARIN("heparin"),
  CLOT_ACTIVATOR("clot-activator");

  private final String word;

  Tube(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
