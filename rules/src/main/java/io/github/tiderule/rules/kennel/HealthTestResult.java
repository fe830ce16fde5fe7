package io.github.tiderule.rules.kennel;

import io.github.tiderule.rules.fact.Worded;

/**
 * What a test before breeding found: positive or negative for an infection; clear, carrier or
 * affected for what is inherited or examined.
 */
public enum HealthTestResult implements Worded {
  NEGATIVE("negative"),
  POSITIVE("positive"),
  CLEAR("clear"),
  CARRIER("carrier"),
  AFFECTED("affected"),
  UNKNOWN("unknown");

  private final String word;

  HealthTestResult(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
