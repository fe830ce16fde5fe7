package io.github.tiderule.rules.fact.assay;

import io.github.tiderule.rules.fact.Worded;

/** How a laboratory or a point-of-care reader measures progesterone. */
public enum Method implements Worded {
  RIA("ria"),
  CLIA("clia"),
  ECLIA("eclia"),
  ELFA("elfa"),
  FEIA("feia"),
  FLUORESCENCE("fluorescence"),
  DRY_SLIDE("dry-slide"),
  UNKNOWN("unknown");

  private final String word;

  Method(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
