package io.github.tiderule.rules.conclusion.care;

/** How grave a caution is; {@link #STOP} ends all talk of timing. */
public enum CautionLevel {
  STOP,
  VET,
  CARE
}
