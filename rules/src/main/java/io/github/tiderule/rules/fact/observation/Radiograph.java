package io.github.tiderule.rules.fact.observation;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One radiograph of the abdomen.
 *
 * @param fetuses how many skeletons were counted, if anybody counted
 * @param skeletonSeen whether fetal skeletons are seen, if said
 */
public record Radiograph(
    String id, Instant at, @Nullable Integer fetuses, @Nullable Boolean skeletonSeen)
    implements Observation {

  /** Whether it shows a pregnancy. */
  public boolean shown() {
    return Boolean.TRUE.equals(skeletonSeen) || (fetuses != null && fetuses > 0);
  }
}
