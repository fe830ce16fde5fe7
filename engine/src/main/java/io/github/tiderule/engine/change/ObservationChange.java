package io.github.tiderule.engine.change;

import io.github.tiderule.rules.fact.Worded;
import org.jspecify.annotations.Nullable;

/**
 * An observation that one record has otherwise than the other.
 *
 * @param observation its id
 * @param ovulationShiftHours by how much it moves the middle of ovulation in the answer it belongs
 *     to, hours, later is positive; absent where that answer did not use it. Of a removed
 *     observation it is what it did before
 * @param widthChangeHours by how much it changes the 9-in-10 span there, hours
 */
public record ObservationChange(
    String observation,
    Kind kind,
    @Nullable Double ovulationShiftHours,
    @Nullable Double widthChangeHours) {

  /** In what way it differs. */
  public enum Kind implements Worded {
    /** Only in the later record. */
    ADDED("added"),
    /** In both, with different content. */
    CORRECTED("corrected"),
    /** Only in the earlier record. */
    REMOVED("removed"),
    /** The same in both, but only now used to date ovulation. */
    NOW_USED("now-used"),
    /** The same in both, but no longer used to date ovulation. */
    NO_LONGER_USED("no-longer-used");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    @Override
    public String word() {
      return word;
    }
  }
}
