package io.github.tiderule.rules.fact;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How shipped semen is ordered.
 *
 * @param cutOff last local time of a day to order for shipping that day
 * @param transitHours hours from cut-off to arrival
 */
public record OrderTerms(
    @Nullable LocalTime cutOff,
    @Nullable Double transitHours,
    List<DayOfWeek> noDeliveryOn,
    List<LocalDate> holidays) {

  public OrderTerms {
    noDeliveryOn = noDeliveryOn.stream().distinct().sorted().toList();
    holidays = holidays.stream().distinct().sorted().toList();
  }
}
