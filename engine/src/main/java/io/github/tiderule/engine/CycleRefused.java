package io.github.tiderule.engine;

import io.github.tiderule.engine.validation.Violation;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A season's record that holds what no record can hold. The message names every field and what is
 * wrong with it; {@link #violations} tells the same to programs.
 */
public final class CycleRefused extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  private final transient List<Violation> violations;

  CycleRefused(List<Violation> violations) {
    super(
        violations.stream()
            .map(one -> one.field() + ": " + one.message())
            .collect(Collectors.joining("; ")));
    this.violations = List.copyOf(violations);
  }

  /** All that is wrong, at least one, each with its field in the record's own terms. */
  public List<Violation> violations() {
    return violations;
  }
}
