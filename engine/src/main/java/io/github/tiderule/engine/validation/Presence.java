package io.github.tiderule.engine.validation;

import java.util.Optional;

/** What must be there, and how much of it. */
public final class Presence {

  private Presence() {}

  /** That a field is missing. */
  public static Violation missing(String name) {
    return Violation.of(name, Violation.Code.MISSING_FIELD, null, name + " is missing");
  }

  /**
   * That of several fields at least one must be there, and none is.
   *
   * @param fields their names, such as {@code low and high}
   * @param hint what needs one of them
   */
  static Violation allMissing(String fields, String hint) {
    return Violation.of("", Violation.Code.MISSING_FIELD, null, fields + " are both missing")
        .hint(hint);
  }

  /** Why a list is too long; empty where it is not. */
  public static Optional<Violation> tooMany(String name, int size, int most) {
    return size <= most
        ? Optional.empty()
        : Optional.of(
            new Violation(
                name,
                Violation.Code.TOO_MANY,
                size,
                Range.of(0, most, "entries"),
                name + " has " + size + " entries; " + most + " are the most",
                null));
  }
}
