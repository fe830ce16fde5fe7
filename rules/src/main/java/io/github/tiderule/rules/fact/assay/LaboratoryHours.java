package io.github.tiderule.rules.fact.assay;

import io.github.tiderule.rules.fact.Listing;
import java.time.DayOfWeek;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When the laboratory works.
 *
 * @param turnaroundHours hours from drawing to result, 0–336, if known
 * @param opensOn days a sample can be drawn for; empty means every day
 */
public record LaboratoryHours(@Nullable Double turnaroundHours, List<DayOfWeek> opensOn) {

  public LaboratoryHours {
    opensOn = Listing.sorted(opensOn);
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
    return new LaboratoryHours(hours, opensOn);
  }

  /** With all days a sample can be drawn for. */
  public LaboratoryHours opensOn(DayOfWeek... days) {
    return new LaboratoryHours(turnaroundHours, Arrays.asList(days));
  }
}
