package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.fact.Worded;
import java.util.Locale;

/** What a decision before the next result may turn out to be. */
public enum Mistake implements Worded {
  /** To act on the forecast where waiting would have done better. */
  ACT,
  /** To wait where acting would have done better. */
  WAIT;

  @Override
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
