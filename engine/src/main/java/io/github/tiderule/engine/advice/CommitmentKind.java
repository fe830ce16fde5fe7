package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** What must be done in time for a plan to hold. */
public enum CommitmentKind implements Worded {
  /** The semen is ordered. */
  ORDER,
  /** The clinic is booked. */
  BOOK,
  /** She sets out. */
  LEAVE;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
