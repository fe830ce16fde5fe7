package io.github.tiderule.rules.fact.assay;

import io.github.tiderule.rules.fact.Listing;
import java.time.DayOfWeek;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When the laboratory works, and whether there is one.
 *
 * @param turnaroundHours hours from drawing to result, 0–336, if known
 * @param opensOn days a sample can be drawn for; empty means every day
 * @param reachable whether progesterone can be tested anywhere in time, if said
 */
public record LaboratoryHours(
    @Nullable Double turnaroundHours, List<DayOfWeek> opensOn, @Nullable Boolean reachable) {

  public LaboratoryHours {
    opensOn = Listing.sorted(opensOn);
  }

  /** The hours of a laboratory within reach, or of which nobody said. */
  public LaboratoryHours(@Nullable Double turnaroundHours, List<DayOfWeek> opensOn) {
    this(turnaroundHours, opensOn, null);
  }

  /** What holds when nobody said anything. */
  public static LaboratoryHours unknown() {
    return new LaboratoryHours(null, List.of());
  }

  /**
   * With the time from drawing to result.
   *
   * @param hours 0–336
   */
  public LaboratoryHours turnaroundHours(double hours) {
    return new LaboratoryHours(hours, opensOn, reachable);
  }

  /** With all days a sample can be drawn for. */
  public LaboratoryHours opensOn(DayOfWeek... days) {
    return new LaboratoryHours(turnaroundHours, Arrays.asList(days), reachable);
  }

  /** With whether progesterone can be tested anywhere in time. */
  public LaboratoryHours reachable(boolean there) {
    return new LaboratoryHours(turnaroundHours, opensOn, there);
  }
}
