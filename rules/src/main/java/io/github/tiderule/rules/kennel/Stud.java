package io.github.tiderule.rules.kennel;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The male, as far as he is known.
 *
 * @param name at most 120 characters, if known
 * @param breed at most 120 characters, if known
 * @param bodyMassKg body mass in kilograms, 0.5–150, if known
 * @param bornOn not after the moment of the advice, if known
 * @param provenSire whether he has sired a litter, if known
 */
public record Stud(
    @Nullable String name,
    @Nullable String breed,
    @Nullable Double bodyMassKg,
    @Nullable LocalDate bornOn,
    @Nullable Boolean provenSire) {

  /** A male of whom nothing was said. */
  public static Stud unknown() {
    return new Stud(null, null, null, null, null);
  }

  /**
   * With what he is called.
   *
   * @param called at most 120 characters
   */
  public Stud name(String called) {
    return new Stud(called, breed, bodyMassKg, bornOn, provenSire);
  }

  /**
   * With his breed.
   *
   * @param words at most 120 characters
   */
  public Stud breed(String words) {
    return new Stud(name, words, bodyMassKg, bornOn, provenSire);
  }

  /**
   * With his body mass.
   *
   * @param kg kilograms, 0.5–150
   */
  public Stud bodyMassKg(double kg) {
    return new Stud(name, breed, kg, bornOn, provenSire);
  }

  /** With the day he was born, not after the moment of the advice. */
  public Stud bornOn(LocalDate day) {
    return new Stud(name, breed, bodyMassKg, day, provenSire);
  }

  /** With whether he has sired a litter. */
  public Stud provenSire(boolean has) {
    return new Stud(name, breed, bodyMassKg, bornOn, has);
  }
}
