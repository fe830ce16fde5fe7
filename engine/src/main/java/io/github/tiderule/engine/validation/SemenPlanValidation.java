package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Checks what she is to be bred with. */
record SemenPlanValidation(SeasonDates dates) {

  void check(Place place, SemenPlan plan) {
    place.has("semen", plan.semen());
    place.has("route", plan.route());
    place.whole("doses", plan.doses(), Limits.DOSES);
    place.number("hoursBetween", plan.hoursBetween(), Limits.HOURS);
    place.number("chilledAgeHours", plan.chilledAgeHours(), Limits.HOURS);
    if (plan.dose() != null) {
      check(place.of("dose"), plan.dose());
    }
    place.parts("available", plan.available(), Limits.SPANS, this::check);
    if (plan.order() != null) {
      check(place.of("order"), plan.order());
    }
    place.number("travelHours", plan.travelHours(), Limits.HOURS);
  }

  private static void check(Place place, Dose dose) {
    place.number("totalSperm", dose.totalSperm(), Limits.SPERM);
    place.number("progressivelyMotilePercent", dose.progressivelyMotilePercent(), Limits.PERCENT);
    place.number("normalPercent", dose.normalPercent(), Limits.PERCENT);
  }

  private void check(Place place, Availability span) {
    boolean from = moment(place, "from", span.from());
    boolean to = moment(place, "to", span.to());
    if (from && to) {
      place.note(SeasonConsistency.span(span, dates));
    }
  }

  private boolean moment(Place place, String name, @Nullable Instant at) {
    boolean there = place.has(name, at);
    if (at != null) {
      place.note(dates.ofAnyYear(name, at));
    }
    return there;
  }

  private void check(Place place, OrderTerms order) {
    place.number("transitHours", order.transitHours(), Limits.HOURS);
    place.words("noDeliveryOn", order.noDeliveryOn());
    place.values(
        "holidays",
        order.holidays(),
        Limits.HOLIDAYS,
        (entry, day) -> place.note(dates.ofAnyYear(entry, day)));
    place.words("collectionOn", order.collectionOn());
  }
}
