package io.github.tiderule.rules.kennel;

import io.github.tiderule.rules.fact.Worded;

/** What a test before breeding looks for. */
public enum HealthTestKind implements Worded {
  BRUCELLA("brucella"),
  GENETIC("genetic"),
  HIP("hip"),
  ELBOW("elbow"),
  EYE("eye"),
  CARDIAC("cardiac"),
  SEMEN("semen"),
  OTHER("other");

  private final String word;

  HealthTestKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
