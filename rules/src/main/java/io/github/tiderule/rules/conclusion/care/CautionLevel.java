package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** How grave a caution is; {@link #STOP} ends all talk of timing. */
public enum CautionLevel implements Worded {
  STOP,
  VET,
  CARE;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
