package io.github.tiderule.rules;

/** The stages that rules speak in, in the order an evaluation runs through them. */
public enum Stage {
  READING,
  FINDINGS,
  DAYS,
  NEXT,
  CARE;

  /** The stage's word, as it stands in a trace, a parameter id and a rule package. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
