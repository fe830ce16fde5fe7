package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** What whelping is counted from. */
public enum CountedFrom implements Worded {
  OVULATION,
  /** The shift of the smear. */
  DIOESTRUS;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
