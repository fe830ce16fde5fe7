package io.github.tiderule.rules.fact.observation;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One vaginal smear; at least one of the two is known.
 *
 * @param cornifiedPercent share of cornified cells, 0–100, if counted
 * @param neutrophils how many neutrophils, if looked for
 */
public record Smear(
    String id, Instant at, @Nullable Double cornifiedPercent, @Nullable Neutrophils neutrophils)
    implements Observation {

  /** A smear of which cornified cells, neutrophils or both are to be told. */
  public static Smear at(Instant at) {
    return new Smear(UNNAMED, at, null, null);
  }

  /**
   * With the share of cornified cells.
   *
   * @param percent 0–100
   */
  public Smear cornifiedPercent(double percent) {
    return new Smear(id, at, percent, neutrophils);
  }

  /** With how many neutrophils it shows. */
  public Smear neutrophils(Neutrophils many) {
    return new Smear(id, at, cornifiedPercent, many);
  }

  @Override
  public Smear withId(String id) {
    return new Smear(id, at, cornifiedPercent, neutrophils);
  }
}
