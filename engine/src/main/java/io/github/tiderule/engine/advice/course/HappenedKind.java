package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.fact.Worded;

/** What of a pregnancy can be past. */
public enum HappenedKind implements Worded {
  BREEDING("breeding"),
  SCAN("scan"),
  RADIOGRAPH("radiograph"),
  FIRST_PUP("first-pup"),
  WHELPED("whelped");

  private final String word;

  HappenedKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
