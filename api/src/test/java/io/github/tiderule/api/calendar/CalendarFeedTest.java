package io.github.tiderule.api.calendar;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.startsWith;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import io.github.tiderule.api.Documents;
import io.github.tiderule.api.SampleAdvice;
import io.github.tiderule.api.json.AdviceJson;
import io.github.tiderule.api.json.Layout;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Whelping;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.TimeZone;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class CalendarFeedTest {

  private static final Instant NOW = Instant.parse("2027-01-12T17:30:00Z");
  private static final String SEASON = "0123456789abcdefghjkmnpqrs";

  private static OffsetDateTime at(String text) {
    return OffsetDateTime.parse(text);
  }

  private static AdvisedDates dates(Advice advice) {
    return AdvisedDates.of(AdviceJson.text(advice, Layout.ONE_LINE), "Juniper");
  }

  private static AdvisedDates dates(
      OffsetDateTime asOf, @Nullable Plan plan, @Nullable NextTest test) {
    return dates(advice(asOf, plan, test, null));
  }

  /** The sample without its estimates and breeding days, with other dates. */
  private static Advice advice(
      OffsetDateTime asOf,
      @Nullable Plan plan,
      @Nullable NextTest test,
      @Nullable Whelping whelping) {
    Advice full = SampleAdvice.full();
    return new Advice(
        full.stamp(),
        asOf,
        asOf.plusDays(1),
        full.femaleId(),
        full.action(),
        null,
        null,
        List.of(),
        plan,
        test,
        null,
        null,
        whelping,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static Plan plan(@Nullable OffsetDateTime orderBy, OffsetDateTime... at) {
    return new Plan(
        List.of(at),
        new EggShare(0.9, 0.7),
        orderBy,
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of());
  }

  private static NextTest test(OffsetDateTime at) {
    return new NextTest("progesterone", at, at.plusHours(8), 0.04, List.of());
  }

  private static ICalendar read(AdvisedDates... advice) {
    String text = CalendarFeed.text(SEASON, List.of(advice), NOW);
    ICalendar calendar = Biweekly.parse(text).first();
    assertThat(text, calendar, notNullValue());
    assertThat(calendar.validate(ICalVersion.V2_0).toString(), is(""));
    assertThat(Biweekly.parse(text).all(), hasSize(1));
    return calendar;
  }

  private static VEvent event(ICalendar calendar, String part) {
    return calendar.getEvents().stream()
        .filter(one -> one.getUid().getValue().equals(SEASON + "-" + part + "@tiderule.github.io"))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no " + part));
  }

  private static String shown(VEvent event) {
    return event.getDateStart().getValue().toInstant()
        + " "
        + event.getSequence().getValue()
        + " "
        + event.getStatus().getValue();
  }

  @Test
  void everyDateOfTheAdviceIsAnEntry() {
    ICalendar calendar = read(dates(SampleAdvice.full()));
    List<String> uids = new ArrayList<>();
    calendar.getEvents().forEach(one -> uids.add(one.getUid().getValue()));
    assertThat(
        uids.stream().map(uid -> uid.substring(SEASON.length() + 1)).toList(),
        containsInAnyOrder(
            "test-1@tiderule.github.io",
            "breeding-1@tiderule.github.io",
            "breeding-2@tiderule.github.io",
            "order-1@tiderule.github.io",
            "ovulation-1@tiderule.github.io",
            "whelping-1@tiderule.github.io"));
    VEvent first = event(calendar, "breeding-1");
    assertThat(shown(first), is("2027-01-14T07:00:00Z 0 CONFIRMED"));
    assertThat(
        first.getDateEnd().getValue().toInstant(), is(Instant.parse("2027-01-14T11:00:00Z")));
    assertThat(first.getDescription().getValue(), startsWith("Best about Thu 14 Jan 2027, 10:00"));
    VEvent second = event(calendar, "breeding-2");
    assertThat(shown(second), is("2027-01-15T09:00:00Z 0 CONFIRMED"));
    assertThat("outside every window", second.getDateEnd() == null, is(true));
    VEvent order = event(calendar, "order-1");
    assertThat(
        order.getDateEnd().getValue().toInstant(), is(Instant.parse("2027-01-13T13:00:00Z")));
    assertThat(order.getSummary().getValue(), is("Juniper: order by 14:00"));
    for (VEvent event : calendar.getEvents()) {
      assertThat(
          event.getDateTimeStamp().getValue().toInstant(),
          is(Instant.parse("2027-01-12T17:30:00Z")));
    }
  }

  @Test
  void estimatesAreWholeLocalDaysWhateverZoneTheMachineIsIn() {
    TimeZone before = TimeZone.getDefault();
    TreeSet<String> texts = new TreeSet<>();
    try {
      for (String zone : List.of("UTC", "Pacific/Kiritimati", "America/Los_Angeles")) {
        TimeZone.setDefault(TimeZone.getTimeZone(zone));
        texts.add(CalendarFeed.text(SEASON, List.of(dates(SampleAdvice.full())), NOW));
      }
    } finally {
      TimeZone.setDefault(before);
    }
    assertThat(texts, hasSize(1));
    assertThat(texts.first(), containsString("DTSTART;VALUE=DATE:20270312\r\n"));
    assertThat(texts.first(), containsString("DTEND;VALUE=DATE:20270321\r\n"));
    assertThat(texts.first(), containsString("DTSTART:20270114T070000Z\r\n"));
  }

  @Test
  void sixtyHoursStaySixtyHoursOverTheChangeOfClocks() {
    OffsetDateTime from = at("2027-03-26T22:00:00+01:00");
    OffsetDateTime to =
        from.toInstant()
            .plus(Duration.ofHours(60))
            .atZone(ZoneId.of("Europe/Paris"))
            .toOffsetDateTime();
    assertThat(to, is(at("2027-03-29T11:00:00+02:00")));
    ICalendar calendar = read(dates(from.minusHours(5), plan(null, from, to), null));
    Instant first = event(calendar, "breeding-1").getDateStart().getValue().toInstant();
    VEvent second = event(calendar, "breeding-2");
    assertThat(
        Duration.between(first, second.getDateStart().getValue().toInstant()),
        is(Duration.ofHours(60)));
    assertThat(second.getDescription().getValue(), startsWith("Best about Mon 29 Mar 2027, 11:00"));
  }

  @Test
  void anEntryThatMovesKeepsItsUidAndItsSequenceRises() {
    OffsetDateTime breed = at("2027-01-14T10:00:00+01:00");
    OffsetDateTime order = at("2027-01-13T14:00:00+01:00");
    AdvisedDates one =
        dates(
            at("2027-01-11T18:00:00+01:00"),
            plan(order, breed, breed.plusDays(1)),
            test(at("2027-01-13T08:00:00+01:00")));
    AdvisedDates moved =
        dates(
            at("2027-01-12T18:00:00+01:00"),
            plan(null, breed.plusDays(2)),
            test(at("2027-01-13T08:00:00+01:00")));
    AdvisedDates back =
        dates(at("2027-01-12T20:00:00+01:00"), plan(order, breed, breed.plusDays(1)), null);

    ICalendar first = read(one);
    assertThat(shown(event(first, "breeding-1")), is("2027-01-14T09:00:00Z 0 CONFIRMED"));

    ICalendar second = read(one, moved);
    assertThat(shown(event(second, "breeding-1")), is("2027-01-16T09:00:00Z 1 CONFIRMED"));
    assertThat(shown(event(second, "breeding-2")), is("2027-01-15T09:00:00Z 1 CANCELLED"));
    assertThat(shown(event(second, "order-1")), is("2027-01-13T12:00:00Z 1 CANCELLED"));
    assertThat(shown(event(second, "test-1")), is("2027-01-13T07:00:00Z 0 CONFIRMED"));
    assertThat(
        event(second, "test-1").getLastModified().getValue().toInstant(),
        is(one.asOf().toInstant()));
    assertThat(
        event(second, "breeding-2").getLastModified().getValue().toInstant(),
        is(moved.asOf().toInstant()));

    ICalendar third = read(one, moved, back);
    assertThat(shown(event(third, "breeding-1")), is("2027-01-14T09:00:00Z 2 CONFIRMED"));
    assertThat(shown(event(third, "breeding-2")), is("2027-01-15T09:00:00Z 2 CONFIRMED"));
    assertThat(shown(event(third, "order-1")), is("2027-01-13T12:00:00Z 2 CONFIRMED"));
    assertThat(shown(event(third, "test-1")), is("2027-01-13T07:00:00Z 1 CANCELLED"));
    assertThat("nothing is added twice", third.getEvents(), hasSize(4));

    ICalendar again = read(one, moved, back, back);
    assertThat(shown(event(again, "breeding-1")), is("2027-01-14T09:00:00Z 2 CONFIRMED"));
    assertThat(shown(event(again, "test-1")), is("2027-01-13T07:00:00Z 1 CANCELLED"));
  }

  @Test
  void whatIsPastStaysAndTheNextIsNew() {
    OffsetDateTime first = at("2027-01-13T08:00:00+01:00");
    AdvisedDates one = dates(first.minusHours(12), null, test(first));
    AdvisedDates next = dates(first.plusHours(10), null, test(first.plusDays(2)));
    ICalendar calendar = read(one, next);
    assertThat(shown(event(calendar, "test-1")), is("2027-01-13T07:00:00Z 0 CONFIRMED"));
    assertThat(shown(event(calendar, "test-2")), is("2027-01-15T07:00:00Z 0 CONFIRMED"));
  }

  @Test
  void anEstimateMovesAlsoWhenItsDaysArePast() {
    OffsetDateTime median = at("2027-03-16T14:00:00+01:00");
    AdvisedDates one =
        dates(
            advice(
                at("2027-01-12T18:00:00+01:00"),
                null,
                null,
                new Whelping(median, median.minusDays(3), median.plusDays(3), List.of())));
    AdvisedDates sameDays =
        dates(
            advice(
                at("2027-01-12T20:00:00+01:00"),
                null,
                null,
                new Whelping(
                    median.plusHours(1),
                    median.minusDays(3).plusHours(1),
                    median.plusDays(3).plusHours(1),
                    List.of())));
    AdvisedDates later =
        dates(
            advice(
                at("2027-03-25T18:00:00+01:00"),
                null,
                null,
                new Whelping(
                    median.plusDays(1), median.minusDays(2), median.plusDays(4), List.of())));
    VEvent event = event(read(one, sameDays), "whelping-1");
    assertThat(event.getSequence().getValue(), is(0));
    ICalendar moved = read(one, sameDays, later);
    assertThat(moved.getEvents(), hasSize(1));
    assertThat(event(moved, "whelping-1").getSequence().getValue(), is(1));
    assertThat(event(moved, "whelping-1").getTransparency().getValue(), is("TRANSPARENT"));
  }

  @Test
  void aNameCannotBreakOutOfItsEntry() {
    String name =
        "J\u202Eune,\u0007; b\\n\r\nBEGIN:VALARM\u2028 \u00E9\u5B50\uD83D\uDC15".repeat(3);
    AdvisedDates hostile =
        AdvisedDates.of(AdviceJson.text(SampleAdvice.full(), Layout.ONE_LINE), name);
    String text = CalendarFeed.text(SEASON, List.of(hostile), NOW);
    assertThat(text, not(containsString("\u202E")));
    assertThat(
        text.chars().allMatch(c -> c == '\r' || c == '\n' || !Character.isISOControl(c)), is(true));
    for (String line : text.split("\r\n", -1)) {
      assertThat(line, not(startsWith("BEGIN:VALARM")));
      assertThat(line, not(containsString("\n")));
      assertThat(line, not(containsString("\r")));
    }
    ICalendar calendar = Biweekly.parse(text).first();
    assertThat(
        event(calendar, "breeding-1").getSummary().getValue(),
        is("June,; b\\nBEGIN:VALARM \u00E9\u5B50\uD83D\uDC15".repeat(3) + ": breed"));
    assertThat(event(calendar, "breeding-1").getAlarms(), is(List.of()));
  }

  @Test
  void aCalendarWithoutDatesSaysWhy() {
    ICalendar none = read();
    assertThat(none.getEvents(), is(List.of()));
    assertThat(none.getJournals().get(0).getSummary().getValue(), startsWith("No advice"));
    ICalendar undated = read(dates(at("2027-01-12T18:00:00+01:00"), null, null));
    assertThat(
        undated.getJournals().get(0).getSummary().getValue(),
        is(SampleAdvice.full().action().headline()));
  }

  @Test
  void aLaterFileOfTheSameSeasonHasTheSameName() {
    String name = CalendarFeed.seasonOf(Documents.read(Documents.fullCycle()));
    String later =
        CalendarFeed.seasonOf(
            Documents.read(Documents.fullCycle("\"value\": 2.1", "\"value\": 2.2")));
    String other = CalendarFeed.seasonOf(Documents.read(Documents.cycleWith("")));
    assertThat(later, is(name));
    assertThat(other, is(not(name)));
  }
}
