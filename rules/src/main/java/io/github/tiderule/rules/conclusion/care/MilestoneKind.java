package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.fact.Worded;

/** What is due in a pregnancy, in the order of time. */
public enum MilestoneKind implements Worded {
  HEARTBEAT("heartbeat"),
  RELAXIN("relaxin"),
  SCAN("scan"),
  WEIGHING("weighing"),
  BOX_AND_PHONE("box-and-phone"),
  TEMPERATURE_CHART("temperature-chart"),
  RADIOGRAPH("radiograph");

  private final String word;

  MilestoneKind(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
