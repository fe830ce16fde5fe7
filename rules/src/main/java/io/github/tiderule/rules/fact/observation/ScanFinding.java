package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Worded;

/** What ultrasound shows of a pregnancy. */
public enum ScanFinding implements Worded {
  PREGNANT("pregnant"),
  NOT_PREGNANT("not-pregnant"),
  HEARTBEATS("heartbeats"),
  NO_HEARTBEAT("no-heartbeat");

  private final String word;

  ScanFinding(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
