package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** A kind of test that can be advised. */
public enum TestKind implements Worded {
  PROGESTERONE,
  LH,
  CYTOLOGY;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
