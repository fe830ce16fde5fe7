package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A mating or insemination that has taken place.
 *
 * @param sire what the male is called, at most 120 characters, if said
 * @param note anything else about it, at most 500 characters, if said
 */
public record BreedingDone(
    String id, Instant at, Semen semen, Route route, @Nullable String sire, @Nullable String note)
    implements Observation {

  /** A breeding of which no more is known. */
  public BreedingDone(String id, Instant at, Semen semen, Route route) {
    this(id, at, semen, route, null, null);
  }

  /** A breeding by the usual route of its semen. */
  public static BreedingDone of(Semen semen, Instant at) {
    return new BreedingDone(UNNAMED, at, semen, Route.usualFor(semen));
  }

  /** By another route. */
  public BreedingDone route(Route route) {
    return new BreedingDone(id, at, semen, route, sire, note);
  }

  /**
   * By a male.
   *
   * @param called at most 120 characters
   */
  public BreedingDone sire(String called) {
    return new BreedingDone(id, at, semen, route, called, note);
  }

  /**
   * With anything else about it.
   *
   * @param words at most 500 characters
   */
  public BreedingDone note(String words) {
    return new BreedingDone(id, at, semen, route, sire, words);
  }

  /** Whether it names its male. */
  public boolean byNamedMale() {
    return sire != null;
  }

  /** Whether both name a male, and not the same. */
  public boolean byAnother(BreedingDone other) {
    return sire != null && other.sire() != null && !plain(sire).equals(plain(other.sire()));
  }

  private static String plain(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  @Override
  public BreedingDone withId(String id) {
    return new BreedingDone(id, at, semen, route, sire, note);
  }
}
