package io.github.tiderule.rules.fact.semen;

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
 * @param noDeliveryOn days without a courier: nothing arrives, and nothing is picked up unless
 *     {@code collectionOn} says so
 * @param holidays days without a courier at either end
 * @param collectionOn days on which semen can be collected and shipped; empty means every day with
 *     a courier
 */
public record OrderTerms(
    @Nullable LocalTime cutOff,
    @Nullable Double transitHours,
    List<DayOfWeek> noDeliveryOn,
    List<LocalDate> holidays,
    List<DayOfWeek> collectionOn) {

  /** Terms with collection on every day with a courier. */
  public OrderTerms(
      @Nullable LocalTime cutOff,
      @Nullable Double transitHours,
      List<DayOfWeek> noDeliveryOn,
      List<LocalDate> holidays) {
    this(cutOff, transitHours, noDeliveryOn, holidays, List.of());
  }

  public OrderTerms {
    noDeliveryOn = noDeliveryOn.stream().distinct().sorted().toList();
    holidays = holidays.stream().distinct().sorted().toList();
    collectionOn = collectionOn.stream().distinct().sorted().toList();
  }

  /** Whether something shipped can arrive on a day. */
  public boolean deliversOn(LocalDate day) {
    return !noDeliveryOn.contains(day.getDayOfWeek()) && !holidays.contains(day);
  }

  /** Whether semen can be collected and shipped on a day. */
  public boolean collectsOn(LocalDate day) {
    return collectionOn.isEmpty()
        ? deliversOn(day)
        : collectionOn.contains(day.getDayOfWeek()) && !holidays.contains(day);
  }
}
