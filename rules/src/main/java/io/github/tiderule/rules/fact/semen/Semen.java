package io.github.tiderule.rules.fact.semen;

import io.github.tiderule.rules.fact.Worded;
import org.jspecify.annotations.Nullable;

/** The semen she is bred with. */
public enum Semen implements Worded {
  NATURAL("natural"),
  FRESH("fresh"),
  CHILLED("chilled"),
  FROZEN("frozen");

  private final String word;

  Semen(String word) {
    this.word = word;
  }

  /** The semen meant when only a route was said: natural mating, or else fresh semen. */
  public static Semen usualFor(@Nullable Route route) {
    return route == null || route == Route.NATURAL ? NATURAL : FRESH;
  }

  @Override
  public String word() {
    return word;
  }
}
