package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.fact.Worded;

/** The parts of an insemination sheet that rules write lines of, in the order they are done. */
public enum SheetPart implements Worded {
  BEFORE("before"),
  SEMEN("semen"),
  DILUTE("dilute"),
  INSEMINATE("inseminate"),
  AFTER("after"),
  SAME_DAY("same-day"),
  ROUTE("route"),
  VOLUME("volume"),
  CATHETER("catheter");

  private final String word;

  SheetPart(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }

  /** Whether its lines are steps of the checklist. */
  public boolean isStep() {
    return compareTo(AFTER) <= 0;
  }
}
