package io.github.tiderule.rules.fact.observation;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One radiograph of the abdomen; at least one of the two is known.
 *
 * @param fetuses how many skeletons were counted, 0–30, if anybody counted
 * @param skeletonSeen whether fetal skeletons are seen, if said
 */
public record Radiograph(
    String id, Instant at, @Nullable Integer fetuses, @Nullable Boolean skeletonSeen)
    implements Observation {

  /** A radiograph of which a count, skeletons or both are to be told. */
  public static Radiograph at(Instant at) {
    return new Radiograph(UNNAMED, at, null, null);
  }

  /**
   * With the count of skeletons.
   *
   * @param count 0–30
   */
  public Radiograph fetuses(int count) {
    return new Radiograph(id, at, count, skeletonSeen);
  }

  /** With whether skeletons are seen. */
  public Radiograph skeletonSeen(boolean seen) {
    return new Radiograph(id, at, fetuses, seen);
  }

  @Override
  public Radiograph withId(String id) {
    return new Radiograph(id, at, fetuses, skeletonSeen);
  }

  /** Whether it shows a pregnancy. */
  public boolean shown() {
    return Boolean.TRUE.equals(skeletonSeen) || (fetuses != null && fetuses > 0);
  }
}
