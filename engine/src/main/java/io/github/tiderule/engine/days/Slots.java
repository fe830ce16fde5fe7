package io.github.tiderule.engine.days;

import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The half-day clock windows in which breeding is possible: a morning and an afternoon on each
 * local day, inside what stud and clinic allow, within reach, and only where ordered semen can
 * still arrive.
 *
 * <p>Of what stud and clinic allow of a half-day, the usual clock hours are taken; where none of
 * these are allowed, what is. A box of chilled semen is the freshest one that arrives in time on a
 * day with a courier; one that would wait in a depot over such a day is not planned with. Its age
 * counts from the cut-off of the day it was shipped, and is at least what the file says.
 */
public final class Slots {

  private final Parameters parameters;
  private final SemenPlan plan;
  private final Instant now;
  private final ZoneId zone;
  private final List<Availability> available;

  public Slots(Parameters parameters, SemenPlan plan, Instant now, ZoneId zone) {
    this.parameters = parameters;
    this.plan = plan;
    this.now = now;
    this.zone = zone;
    available = joined(plan.available());
  }

  /** Spans in time order, those that overlap or touch made one. */
  private static List<Availability> joined(List<Availability> spans) {
    List<Availability> joined = new ArrayList<>();
    for (Availability span :
        spans.stream().sorted(Comparator.comparing(Availability::from)).toList()) {
      int last = joined.size() - 1;
      if (last >= 0 && !span.from().isAfter(joined.get(last).to())) {
        Availability before = joined.get(last);
        joined.set(last, new Availability(before.from(), later(before.to(), span.to())));
      } else {
        joined.add(span);
      }
    }
    return joined;
  }

  private double value(String name) {
    return parameters.value("planning." + name);
  }

  private static Duration hours(double hours) {
    return Duration.ofSeconds(Math.round(hours * 3600));
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
    Availability morning =
        new Availability(at(day, value("morning-from")), at(day, value("morning-until")));
    Availability afternoon =
        new Availability(at(day, value("afternoon-from")), at(day, value("afternoon-until")));
    if (plan.available().isEmpty()) {
      return List.of(morning, afternoon);
    }
    Instant noon = at(day, 12);
    Instant start = day.atStartOfDay(zone).toInstant();
    Instant end = day.plusDays(1).atStartOfDay(zone).toInstant();
    List<Availability> spans = new ArrayList<>();
    for (Availability span : available) {
      within(span, new Availability(start, noon), morning).ifPresent(spans::add);
    }
    for (Availability span : available) {
      within(span, new Availability(noon, end), afternoon).ifPresent(spans::add);
    }
    return spans;
  }

  private Optional<Availability> within(Availability span, Availability half, Availability usual) {
    return common(span, usual).or(() -> common(span, half));
  }

  /** What two spans share, where that is long enough to use. */
  private Optional<Availability> common(Availability a, Availability b) {
    return lasting(later(a.from(), b.from()), earlier(a.to(), b.to()));
  }

  private Optional<Availability> lasting(Instant from, Instant to) {
    boolean enough = Duration.between(from, to).compareTo(hours(value("shortest-window"))) >= 0;
    return enough ? Optional.of(new Availability(from, to)) : Optional.empty();
  }

  private Optional<Slot> slot(LocalDate day, Availability span) {
    Double travel = plan.travelHours();
    Instant there = travel == null ? now : now.plus(hours(travel));
    return lasting(later(span.from(), there).truncatedTo(ChronoUnit.MINUTES), span.to())
        .flatMap(window -> slot(day, window.from(), window.to()));
  }

  private Optional<Slot> slot(LocalDate day, Instant from, Instant to) {
    Instant middle = from.plus(Duration.between(from, to).dividedBy(2));
    List<Deadline> deadlines = new ArrayList<>();
    double age =
        plan.chilledAgeHours() == null ? value("chilled-age-hours") : plan.chilledAgeHours();
    OrderTerms order = plan.order();
    if (plan.semen() == Semen.CHILLED && order != null) {
      Optional<Instant> shipped = lastOrder(order, middle).filter(cutOff -> !cutOff.isBefore(now));
      if (shipped.isEmpty()) {
        return Optional.empty();
      }
      deadlines.add(new Deadline(CommitmentKind.ORDER, shipped.get()));
      double inTheBox = Duration.between(shipped.get(), middle).toMinutes() / 60.0;
      age = plan.chilledAgeHours() == null ? inTheBox : Math.max(inTheBox, plan.chilledAgeHours());
    }
    if (plan.semen() == Semen.FROZEN || intoUterus()) {
      deadlines.add(new Deadline(CommitmentKind.BOOK, later(now, bookBy(day))));
    }
    if (plan.travelHours() != null) {
      Instant leave = middle.minus(hours(plan.travelHours())).truncatedTo(ChronoUnit.MINUTES);
      deadlines.add(new Deadline(CommitmentKind.LEAVE, later(now, leave)));
    }
    return Optional.of(new Slot(day, from, to, middle, age, deadlines));
  }

  private boolean intoUterus() {
    return plan.route() == Route.TRANSCERVICAL || plan.route() == Route.SURGICAL;
  }

  /** The last office hour of the working day before; Sunday is none. */
  private Instant bookBy(LocalDate day) {
    LocalDate before = day.minusDays(1);
    return at(
        before.getDayOfWeek() == DayOfWeek.SUNDAY ? before.minusDays(1) : before,
        value("book-until"));
  }

  /** The last cut-off from which semen arrives, on a day with a courier, before it is needed. */
  private Optional<Instant> lastOrder(OrderTerms order, Instant needed) {
    LocalTime cutOff = order.cutOff();
    double transit =
        order.transitHours() == null ? value("chilled-age-hours") : order.transitHours();
    LocalDate last = needed.atZone(zone).toLocalDate();
    for (int back = 0; back <= value("order-days"); back++) {
      LocalDate day = last.minusDays(back);
      Instant shipped =
          cutOff == null
              ? at(day, value("usual-cut-off"))
              : day.atTime(cutOff).atZone(zone).toInstant();
      Instant arrives = shipped.plus(hours(transit));
      boolean comes = order.collectsOn(day) && order.deliversOn(arrives.atZone(zone).toLocalDate());
      if (comes && !arrives.isAfter(needed)) {
        return Optional.of(shipped);
      }
    }
    return Optional.empty();
  }

  private Instant at(LocalDate day, double hour) {
    return day.atTime(LocalTime.ofSecondOfDay(Math.round(hour * 3600))).atZone(zone).toInstant();
  }

  private static Instant later(Instant a, Instant b) {
    return a.isAfter(b) ? a : b;
  }

  private static Instant earlier(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }
}
