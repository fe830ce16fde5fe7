package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The female, as far as she is known: {@code Female.unknown().name("Juniper").bodyMassKg(13.2)}.
 *
 * @param id a name for programs, at most 64 characters
 * @param name what she is called, at most 120 characters
 * @param breed at most 120 characters
 * @param bodyMassKg body mass in kilograms, 0.5–150, if known
 * @param bornOn not after the moment of the advice, if known
 * @param littersWhelped 0–40, if known
 * @param caesareans 0–40, if known
 * @param missedPregnancies matings that came to nothing, 0–40, if known
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

  /**
   * With a name for programs.
   *
   * @param key at most 64 characters
   */
  public Female id(String key) {
    return new Female(
        key, name, breed, bodyMassKg, bornOn, littersWhelped, caesareans, missedPregnancies);
  }

  /**
   * With what she is called.
   *
   * @param called at most 120 characters
   */
  public Female name(String called) {
    return new Female(
        id, called, breed, bodyMassKg, bornOn, littersWhelped, caesareans, missedPregnancies);
  }

  /**
   * With her breed.
   *
   * @param words at most 120 characters
   */
  public Female breed(String words) {
    return new Female(
        id, name, words, bodyMassKg, bornOn, littersWhelped, caesareans, missedPregnancies);
  }

  /**
   * With her body mass.
   *
   * @param kg kilograms, 0.5–150
   */
  public Female bodyMassKg(double kg) {
    return new Female(id, name, breed, kg, bornOn, littersWhelped, caesareans, missedPregnancies);
  }

  /** With the day she was born, not after the moment of the advice. */
  public Female bornOn(LocalDate day) {
    return new Female(
        id, name, breed, bodyMassKg, day, littersWhelped, caesareans, missedPregnancies);
  }

  /**
   * With how many litters she has whelped.
   *
   * @param count 0–40
   */
  public Female littersWhelped(int count) {
    return new Female(id, name, breed, bodyMassKg, bornOn, count, caesareans, missedPregnancies);
  }

  /**
   * With how many of them by caesarean.
   *
   * @param count 0–40
   */
  public Female caesareans(int count) {
    return new Female(
        id, name, breed, bodyMassKg, bornOn, littersWhelped, count, missedPregnancies);
  }

  /**
   * With how many matings came to nothing.
   *
   * @param count 0–40
   */
  public Female missedPregnancies(int count) {
    return new Female(id, name, breed, bodyMassKg, bornOn, littersWhelped, caesareans, count);
  }
}
