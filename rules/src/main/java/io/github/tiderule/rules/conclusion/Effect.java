package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** What a reason does to a day. */
public enum Effect implements Worded {
  SUPPORTS,
  OPPOSES,
  VETOES;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
