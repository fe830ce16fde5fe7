package io.github.tiderule.rules.condition;

/** How a condition or a test in it came out. */
public enum Outcome {
  /** It holds. */
  MET,
  /** It does not hold. */
  UNMET,
  /** It needs a value that nobody gave, which is not the same as not holding. */
  MISSING,
  /** It rests on a condition that is not met, and so was not tried. */
  NOT_TRIED;

  /** The outcome in words. */
  public String words() {
    return switch (this) {
      case MET -> "met";
      case UNMET -> "not met";
      case MISSING -> "value missing";
      case NOT_TRIED -> "not tried";
    };
  }
}
