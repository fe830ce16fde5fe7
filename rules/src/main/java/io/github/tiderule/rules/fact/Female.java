package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The female, as far as she is known.
 *
 * @param bodyMassKg body mass in kilograms, positive, if known
 */
public record Female(
    @Nullable String id,
    @Nullable String name,
    @Nullable String breed,
    @Nullable Double bodyMassKg,
    @Nullable LocalDate bornOn,
    @Nullable Integer littersWhelped,
    @Nullable Integer caesareans,
    @Nullable Integer missedPregnancies) {

  /** A female of whom nothing was said. */
  public static Female unknown() {
    return new Female(null, null, null, null, null, null, null, null);
  }
}
