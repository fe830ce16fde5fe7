package io.github.tiderule.rules.fact.semen;

import io.github.tiderule.rules.fact.Listing;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How shipped semen is ordered.
 *
 * @param cutOff last local time of a day to order for shipping that day, if known
 * @param transitHours hours from cut-off to arrival, 0–240, if known
 * @param noDeliveryOn days without a courier: nothing arrives, and nothing is picked up unless
 *     {@code collectionOn} says so
 * @param holidays days without a courier at either end, at most 100
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
    noDeliveryOn = Listing.sorted(noDeliveryOn);
    holidays = Listing.sorted(holidays);
    collectionOn = Listing.sorted(collectionOn);
  }

  /** Terms nobody has named yet. */
  public static OrderTerms unknown() {
    return new OrderTerms(null, null, List.of(), List.of(), List.of());
  }

  /** With the last local time of a day to order for shipping that day. */
  public OrderTerms cutOff(LocalTime time) {
    return new OrderTerms(time, transitHours, noDeliveryOn, holidays, collectionOn);
  }

  /**
   * With the time from cut-off to arrival.
   *
   * @param hours 0–240
   */
  public OrderTerms transitHours(double hours) {
    return new OrderTerms(cutOff, hours, noDeliveryOn, holidays, collectionOn);
  }

  /** With all days of the week without a courier. */
  public OrderTerms noDeliveryOn(DayOfWeek... days) {
    return new OrderTerms(cutOff, transitHours, Arrays.asList(days), holidays, collectionOn);
  }

  /** With all days without a courier at either end, at most 100. */
  public OrderTerms holidays(LocalDate... days) {
    return new OrderTerms(cutOff, transitHours, noDeliveryOn, Arrays.asList(days), collectionOn);
  }

  /** With all days of the week on which semen can be collected and shipped. */
  public OrderTerms collectionOn(DayOfWeek... days) {
    return new OrderTerms(cutOff, transitHours, noDeliveryOn, holidays, Arrays.asList(days));
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
