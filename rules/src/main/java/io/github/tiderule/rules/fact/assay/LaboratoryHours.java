package io.github.tiderule.rules.fact.assay;

import java.time.DayOfWeek;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When the laboratory works.
 *
 * @param turnaroundHours hours from drawing to result, if known
 * @param opensOn days a sample can be drawn for; empty means every day
 */
public record LaboratoryHours(@Nullable Double turnaroundHours, List<DayOfWeek> opensOn) {

  public LaboratoryHours {
    opensOn = opensOn.stream().distinct().sorted().toList();
  }

  /** What holds when nobody said anything. */
  public static LaboratoryHours unknown() {
    return new LaboratoryHours(null, List.of());
  }
}
