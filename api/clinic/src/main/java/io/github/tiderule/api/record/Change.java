package io.github.tiderule.api.record;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** What an entry did to an observation. */
public enum Change implements Worded {
  /** It is new. */
  ADDED,
  /** It reads otherwise now, or counts again. */
  CORRECTED,
  /** It was never so. */
  RETRACTED;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
