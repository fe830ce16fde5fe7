package io.github.tiderule.rules.semen;

import org.jspecify.annotations.Nullable;

/**
 * What the semen is to be made into.
 *
 * @param volumeMl millilitres of one dose, above 0, if wanted
 * @param concentrationMillionPerMl million sperm per mL, motile or not, above 0, if wanted
 * @param doses how many doses are to be made, 1 to 4, if wanted
 */
public record Wanted(
    @Nullable Double volumeMl,
    @Nullable Double concentrationMillionPerMl,
    @Nullable Integer doses) {

  /** Nothing in particular. */
  public static Wanted nothing() {
    return new Wanted(null, null, null);
  }
}
