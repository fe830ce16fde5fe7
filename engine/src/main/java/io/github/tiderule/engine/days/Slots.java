package io.github.tiderule.engine.days;

import io.github.tiderule.rules.fact.Availability;
import io.github.tiderule.rules.fact.OrderTerms;
import io.github.tiderule.rules.fact.Semen;
import io.github.tiderule.rules.fact.SemenPlan;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The half-day clock windows in which breeding is possible: a morning and an afternoon on each
 * local day, inside what stud and clinic allow, and only where ordered semen can still arrive.
 */
public final class Slots {

  private static final LocalTime MORNING = LocalTime.of(8, 0);
  private static final LocalTime MORNING_ENDS = LocalTime.of(12, 0);
  private static final LocalTime AFTERNOON = LocalTime.of(14, 0);
  private static final LocalTime AFTERNOON_ENDS = LocalTime.of(20, 0);
  private static final Duration SHORTEST = Duration.ofMinutes(15);

  /** How many days before arrival an order is looked for. */
  private static final int LONGEST_WAIT_DAYS = 4;

  private final SemenPlan plan;
  private final Instant now;
  private final ZoneId zone;
  private final double usualAgeHours;

  /**
   * @param usualAgeHours age of chilled semen at use when nobody says
   */
  public Slots(SemenPlan plan, Instant now, ZoneId zone, double usualAgeHours) {
    this.plan = plan;
    this.now = now;
    this.zone = zone;
    this.usualAgeHours = usualAgeHours;
  }

  /** All windows from now to the end of a local day, in time order. */
  public List<Slot> until(LocalDate lastDay) {
    List<Slot> slots = new ArrayList<>();
    LocalDate day = now.atZone(zone).toLocalDate();
    while (!day.isAfter(lastDay)) {
      for (Availability span : spans(day)) {
        slot(day, span).ifPresent(slots::add);
      }
      day = day.plusDays(1);
    }
    return slots;
  }

  /** What part of a day's two halves is allowed. */
  private List<Availability> spans(LocalDate day) {
    List<Availability> spans = new ArrayList<>();
    if (plan.available().isEmpty()) {
      spans.add(new Availability(at(day, MORNING), at(day, MORNING_ENDS)));
      spans.add(new Availability(at(day, AFTERNOON), at(day, AFTERNOON_ENDS)));
      return spans;
    }
    Instant start = day.atStartOfDay(zone).toInstant();
    Instant noon = at(day, LocalTime.NOON);
    Instant end = day.plusDays(1).atStartOfDay(zone).toInstant();
    for (Availability span : plan.available()) {
      spans.add(new Availability(later(start, span.from()), earlier(noon, span.to())));
      spans.add(new Availability(later(noon, span.from()), earlier(end, span.to())));
    }
    return spans;
  }

  private Optional<Slot> slot(LocalDate day, Availability span) {
    Instant from = later(span.from(), now).truncatedTo(ChronoUnit.MINUTES);
    Instant to = span.to();
    if (Duration.between(from, to).compareTo(SHORTEST) < 0) {
      return Optional.empty();
    }
    Instant middle = from.plus(Duration.between(from, to).dividedBy(2));
    OrderTerms order = plan.order();
    if (plan.semen() != Semen.CHILLED || order == null) {
      return Optional.of(new Slot(day, from, to, middle, ageHours(), null));
    }
    Optional<Instant> orderBy = lastOrder(order, middle);
    return orderBy
        .filter(cutOff -> !cutOff.isBefore(now))
        .map(
            cutOff ->
                new Slot(
                    day,
                    from,
                    to,
                    middle,
                    Duration.between(cutOff, middle).toMinutes() / 60.0,
                    cutOff));
  }

  private double ageHours() {
    Double said = plan.chilledAgeHours();
    return said == null ? usualAgeHours : said;
  }

  /** The last cut-off from which semen arrives, on a day with deliveries, before it is needed. */
  private Optional<Instant> lastOrder(OrderTerms order, Instant needed) {
    LocalTime cutOff = order.cutOff() == null ? LocalTime.NOON : order.cutOff();
    double transit = order.transitHours() == null ? usualAgeHours : order.transitHours();
    LocalDate day = needed.atZone(zone).toLocalDate();
    for (int back = 0; back <= LONGEST_WAIT_DAYS; back++) {
      Instant shipped = at(day.minusDays(back), cutOff);
      Instant arrives = shipped.plusSeconds(Math.round(transit * 3600));
      LocalDate arrivalDay = arrives.atZone(zone).toLocalDate();
      boolean delivered =
          !order.noDeliveryOn().contains(arrivalDay.getDayOfWeek())
              && !order.holidays().contains(arrivalDay);
      if (delivered && !arrives.isAfter(needed)) {
        return Optional.of(shipped);
      }
    }
    return Optional.empty();
  }

  private Instant at(LocalDate day, LocalTime time) {
    return day.atTime(time).atZone(zone).toInstant();
  }

  private static Instant later(Instant a, Instant b) {
    return a.isAfter(b) ? a : b;
  }

  private static Instant earlier(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }
}
