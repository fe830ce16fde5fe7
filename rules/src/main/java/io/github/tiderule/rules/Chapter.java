package io.github.tiderule.rules;

import java.util.Locale;

/** The chapters that reasoning and rules are told in, in the order they are told. */
public enum Chapter {
  READING,
  FINDINGS,
  DAYS,
  NEXT,
  CARE;

  /** The chapter's word, as it stands in a trace, a rule book and a parameter id. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
