package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Clock windows, couriers, clinics and journeys. */
class SlotsTest {

  private static final Parameters PARAMETERS = Parameters.load();
  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  private static Instant at(String local) {
    return java.time.LocalDateTime.parse(local).atZone(VIENNA).toInstant();
  }

  private static String local(Instant at) {
    return at.atZone(VIENNA).toLocalDateTime().toString();
  }

  private static SemenPlan plan(
      Semen semen,
      Route route,
      @Nullable Double age,
      @Nullable OrderTerms order,
      @Nullable Double travel,
      Availability... available) {
    return new SemenPlan(semen, route, 1, null, age, null, List.of(available), order, travel);
  }

  private static List<Slot> slots(SemenPlan plan, String now, String lastDay) {
    return new Slots(PARAMETERS, plan, at(now), VIENNA).until(LocalDate.parse(lastDay));
  }

  private static OrderTerms order(DayOfWeek... noDelivery) {
    return new OrderTerms(LocalTime.of(14, 0), 20.0, List.of(noDelivery), List.of());
  }

  private static SemenPlan chilled(OrderTerms order) {
    return plan(Semen.CHILLED, Route.VAGINAL, null, order, null);
  }

  private static Optional<Slot> slot(List<Slot> slots, String middle) {
    return slots.stream().filter(slot -> slot.middle().equals(at(middle))).findFirst();
  }

  @Test
  void aDayHasAMorningAndAnAfternoon() {
    List<Slot> slots = slots(SemenPlan.naturalUnlimited(), "2027-03-04T06:00", "2027-03-04");
    assertThat(
        slots.stream().map(slot -> local(slot.from()) + " " + local(slot.to())).toList(),
        contains("2027-03-04T08:00 2027-03-04T12:00", "2027-03-04T14:00 2027-03-04T20:00"));
    assertThat(slots.get(0).deadlines(), empty());
    assertThat(slots.get(0).decideBy(), equalTo(slots.get(0).middle()));
  }

  @Test
  void ofADayThatIsRunningOnlyTheRestCounts() {
    List<Slot> slots = slots(SemenPlan.naturalUnlimited(), "2027-03-04T11:50", "2027-03-04");
    assertThat(slots, hasSize(1));
    assertThat(local(slots.get(0).from()), equalTo("2027-03-04T14:00"));
  }

  @Test
  void availabilityIsCutToUsualHoursUnlessItHasNone() {
    SemenPlan plan =
        plan(
            Semen.FRESH,
            Route.VAGINAL,
            null,
            null,
            null,
            new Availability(at("2027-03-05T12:30"), at("2027-03-05T13:30")),
            // two spans that overlap are one
            new Availability(at("2027-03-06T00:00"), at("2027-03-06T10:00")),
            new Availability(at("2027-03-06T09:00"), at("2027-03-07T00:00")));
    List<Slot> slots = slots(plan, "2027-03-04T06:00", "2027-03-09");
    assertThat(
        slots.stream().map(slot -> local(slot.from()) + " " + local(slot.to())).toList(),
        contains(
            "2027-03-05T12:30 2027-03-05T13:30",
            "2027-03-06T08:00 2027-03-06T12:00",
            "2027-03-06T14:00 2027-03-06T20:00"));
  }

  @Test
  void whatIsPastIsNotOffered() {
    SemenPlan plan =
        plan(
            Semen.FRESH,
            Route.VAGINAL,
            null,
            null,
            null,
            new Availability(at("2027-03-01T08:00"), at("2027-03-02T18:00")));
    assertThat(slots(plan, "2027-03-04T06:00", "2027-03-12"), empty());
  }

  @Test
  void theBoxAgesFromTheCutOffOfItsShipping() {
    // 2027-03-05 is a Friday
    List<Slot> slots = slots(chilled(order(DayOfWeek.SUNDAY)), "2027-03-04T06:00", "2027-03-10");
    Slot saturday = slot(slots, "2027-03-06T17:00").orElseThrow();
    assertThat(local(saturday.by(CommitmentKind.ORDER).orElseThrow()), equalTo("2027-03-05T14:00"));
    assertThat(saturday.ageHours(), closeTo(27, 1e-9));
    // nothing comes on Sunday, so Sunday has to do with Saturday's box
    Slot sunday = slot(slots, "2027-03-07T10:00").orElseThrow();
    assertThat(local(sunday.by(CommitmentKind.ORDER).orElseThrow()), equalTo("2027-03-05T14:00"));
    assertThat(sunday.ageHours(), closeTo(44, 1e-9));
    // and no courier picks up on Sunday for Monday morning
    Slot monday = slot(slots, "2027-03-08T17:00").orElseThrow();
    assertThat(local(monday.by(CommitmentKind.ORDER).orElseThrow()), equalTo("2027-03-05T14:00"));
    Slot tuesday = slot(slots, "2027-03-09T17:00").orElseThrow();
    assertThat(local(tuesday.by(CommitmentKind.ORDER).orElseThrow()), equalTo("2027-03-08T14:00"));
  }

  @Test
  void aWholeWeekendWithoutDeliveryLeavesAGap() {
    List<Slot> slots =
        slots(
            chilled(order(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY)), "2027-03-04T15:00", "2027-03-10");
    // Thursday's cut-off has passed; Friday's box would come on Saturday
    assertThat(
        slots.stream().map(Slot::day).distinct().toList(),
        contains(LocalDate.of(2027, 3, 9), LocalDate.of(2027, 3, 10)));
  }

  @Test
  void aHolidayIsWithoutACourierAtEitherEnd() {
    OrderTerms terms =
        new OrderTerms(LocalTime.of(14, 0), 20.0, List.of(), List.of(LocalDate.of(2027, 3, 10)));
    List<Slot> slots = slots(chilled(terms), "2027-03-08T15:00", "2027-03-11");
    // Tuesday's box would come on the holiday, Wednesday's would be picked up on it
    assertThat(slots, empty());
  }

  @Test
  void collectionOnOneDayOfTheWeekIsKept() {
    OrderTerms terms =
        new OrderTerms(
            LocalTime.of(10, 0),
            24.5,
            List.of(DayOfWeek.SUNDAY),
            List.of(),
            List.of(DayOfWeek.TUESDAY));
    List<Slot> slots = slots(chilled(terms), "2027-03-08T15:00", "2027-03-13");
    assertThat(slots.get(0).day(), equalTo(LocalDate.of(2027, 3, 10)));
    slots.forEach(
        slot ->
            assertThat(
                local(slot.by(CommitmentKind.ORDER).orElseThrow()), equalTo("2027-03-09T10:00")));
    assertThat(slot(slots, "2027-03-11T10:00").orElseThrow().ageHours(), closeTo(48, 1e-9));
  }

  @Test
  void semenIsAtLeastAsOldAsTheFileSays() {
    SemenPlan plan = plan(Semen.CHILLED, Route.VAGINAL, 36.0, order(), null);
    List<Slot> slots = slots(plan, "2027-03-01T06:00", "2027-03-03");
    assertThat(slot(slots, "2027-03-03T10:00").orElseThrow().ageHours(), closeTo(36, 1e-9));
    SemenPlan unordered = plan(Semen.CHILLED, Route.VAGINAL, null, null, null);
    assertThat(
        slots(unordered, "2027-03-01T06:00", "2027-03-01").get(0).ageHours(), closeTo(24, 1e-9));
  }

  @Test
  void theClinicIsToldOnTheWorkingDayBefore() {
    SemenPlan plan = plan(Semen.FROZEN, Route.TRANSCERVICAL, null, null, null);
    List<Slot> slots = slots(plan, "2027-03-04T18:00", "2027-03-08");
    assertThat(
        local(slot(slots, "2027-03-06T10:00").orElseThrow().decideBy()),
        equalTo("2027-03-05T17:00"));
    // before Monday comes Saturday
    assertThat(
        local(slot(slots, "2027-03-08T10:00").orElseThrow().decideBy()),
        equalTo("2027-03-06T17:00"));
    // what should have been told already is to be told now
    assertThat(
        local(slot(slots, "2027-03-05T10:00").orElseThrow().decideBy()),
        equalTo("2027-03-04T18:00"));
  }

  @Test
  void aJourneyIsCountedBackAndKeepsWhatIsOutOfReachOut() {
    SemenPlan plan = plan(Semen.NATURAL, Route.NATURAL, null, null, 9.0);
    List<Slot> slots = slots(plan, "2027-03-04T08:00", "2027-03-05");
    Slot first = slots.get(0);
    assertThat(local(first.from()), equalTo("2027-03-04T17:00"));
    assertThat(first.by(CommitmentKind.LEAVE).orElseThrow(), not(equalTo(first.middle())));
    assertThat(
        local(slot(slots, "2027-03-05T10:00").orElseThrow().decideBy()),
        equalTo("2027-03-05T01:00"));
  }

  @Test
  void hoursAreElapsedHoursWhenClocksChange() {
    ZoneId paris = ZoneId.of("Europe/Paris");
    SemenPlan plan = plan(Semen.NATURAL, Route.NATURAL, null, null, 60.0);
    Instant now = OffsetDateTime.parse("2027-03-26T22:00:00+01:00").toInstant();
    Slot first = new Slots(PARAMETERS, plan, now, paris).until(LocalDate.of(2027, 3, 30)).get(0);
    // sixty hours on, one of them skipped by the clocks
    assertThat(
        first.from().atZone(paris).toOffsetDateTime(),
        equalTo(OffsetDateTime.parse("2027-03-29T11:00:00+02:00")));
  }
}
