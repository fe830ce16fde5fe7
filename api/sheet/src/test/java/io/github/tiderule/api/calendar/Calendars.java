package io.github.tiderule.api.calendar;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.notNullValue;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.AdviceBreeding;
import io.github.tiderule.engine.advice.AdviceCourse;
import io.github.tiderule.engine.advice.AdviceTesting;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.format.SampleAdvice;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.conclusion.TestKind;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Advice with dates of the test's own, and the calendars they make. */
final class Calendars {

  static final Instant NOW = Instant.parse("2027-01-12T17:30:00Z");
  static final String SEASON = "0123456789abcdefghjkmnpqrs";

  static OffsetDateTime at(String text) {
    return OffsetDateTime.parse(text);
  }

  private Calendars() {}

  static AdvisedDates dates(Advice advice) {
    return AdvisedDates.of(AdviceJson.text(advice, Layout.ONE_LINE), "Juniper");
  }

  static AdvisedDates dates(OffsetDateTime asOf, @Nullable Plan plan, @Nullable NextTest test) {
    return dates(advice(asOf, plan, test, null));
  }

  /** The sample without its estimates and breeding days, with other dates. */
  static Advice advice(
      OffsetDateTime asOf,
      @Nullable Plan plan,
      @Nullable NextTest test,
      @Nullable Whelping whelping) {
    Advice full = SampleAdvice.full();
    return Advice.of(full.stamp(), asOf, asOf.plusDays(1), full.femaleId(), full.action())
        .with(AdviceBreeding.NONE.withPlan(plan))
        .with(AdviceTesting.NONE.withNext(test))
        .with(AdviceCourse.NONE.withWhelping(whelping));
  }

  static Plan plan(@Nullable OffsetDateTime orderBy, OffsetDateTime... at) {
    return plan(orderBy, List.of(), at);
  }

  static Plan plan(
      @Nullable OffsetDateTime orderBy, List<Commitment> commitments, OffsetDateTime... at) {
    return new Plan(
        List.of(at),
        new EggShare(0.9, 0.7),
        orderBy,
        List.of(),
        List.of(),
        commitments,
        null,
        List.of());
  }

  static NextTest test(OffsetDateTime at) {
    return new NextTest(TestKind.PROGESTERONE, at, at.plusHours(8), 0.04, List.of());
  }

  static ICalendar read(AdvisedDates... advice) {
    String text = CalendarFeed.text(SEASON, List.of(advice), NOW);
    ICalendar calendar = Biweekly.parse(text).first();
    assertThat(text, calendar, notNullValue());
    assertThat(calendar.validate(ICalVersion.V2_0).toString(), is(""));
    assertThat(Biweekly.parse(text).all(), hasSize(1));
    return calendar;
  }

  static VEvent event(ICalendar calendar, String part) {
    return calendar.getEvents().stream()
        .filter(one -> one.getUid().getValue().equals(SEASON + "-" + part + "@tiderule.github.io"))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no " + part));
  }

  static String shown(VEvent event) {
    return event.getDateStart().getValue().toInstant()
        + " "
        + event.getSequence().getValue()
        + " "
        + event.getStatus().getValue();
  }
}
