package io.github.tiderule.api.calendar;

import static io.github.tiderule.api.calendar.Calendars.NOW;
import static io.github.tiderule.api.calendar.Calendars.SEASON;
import static io.github.tiderule.api.calendar.Calendars.at;
import static io.github.tiderule.api.calendar.Calendars.dates;
import static io.github.tiderule.api.calendar.Calendars.event;
import static io.github.tiderule.api.calendar.Calendars.plan;
import static io.github.tiderule.api.calendar.Calendars.read;
import static io.github.tiderule.api.calendar.Calendars.shown;
import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.SampleAdvice;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.sentence.Sentence;
import java.io.IOException;
import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TimeZone;
import java.util.TreeSet;
import java.util.regex.Pattern;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.CalendarComponent;
import org.junit.jupiter.api.Test;

class CalendarFeedTest {

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
  void whatIsDueIsAnEntryOfItsKind() {
    OffsetDateTime breed = at("2027-01-14T10:00:00+01:00");
    OffsetDateTime by = at("2027-01-13T14:00:00+01:00");
    Plan plan =
        plan(
            by,
            List.of(
                new Commitment(
                    CommitmentKind.ORDER, by, breed, Sentence.of("Order the semen for Thu 14 Jan")),
                new Commitment(
                    CommitmentKind.BOOK,
                    by.plusHours(3),
                    breed,
                    Sentence.of("Book the clinic for Thu 14 Jan")),
                new Commitment(
                    CommitmentKind.ORDER,
                    by.plusDays(1),
                    breed,
                    Sentence.of("Order the semen for Fri 15 Jan")),
                new Commitment(
                    CommitmentKind.LEAVE,
                    breed.minusHours(2),
                    breed,
                    Sentence.of("Set out for Thu 14 Jan"))),
            breed);
    ICalendar calendar = read(dates(at("2027-01-12T18:00:00+01:00"), plan, null));
    assertThat(calendar.getEvents(), hasSize(5));
    assertThat(shown(event(calendar, "order-1")), is("2027-01-13T12:00:00Z 0 CONFIRMED"));
    assertThat(shown(event(calendar, "order-2")), is("2027-01-14T12:00:00Z 0 CONFIRMED"));
    VEvent book = event(calendar, "book-1");
    assertThat(shown(book), is("2027-01-13T15:00:00Z 0 CONFIRMED"));
    assertThat(book.getSummary().getValue(), is("Juniper: book by 17:00"));
    assertThat(
        book.getDescription().getValue(),
        startsWith("Book the clinic for Thu 14 Jan, at the latest by Wed 13 Jan 2027, 17:00"));
    VEvent leave = event(calendar, "leave-1");
    assertThat(
        leave.getDateEnd().getValue().toInstant(), is(Instant.parse("2027-01-14T07:00:00Z")));
  }

  /** Advice kept from before there were any. */
  @Test
  void anOrderWithoutACommitmentIsOneToo() {
    OffsetDateTime breed = at("2027-01-14T10:00:00+01:00");
    ICalendar calendar =
        read(
            dates(
                at("2027-01-12T18:00:00+01:00"),
                plan(at("2027-01-13T14:00:00+01:00"), breed),
                null));
    assertThat(shown(event(calendar, "order-1")), is("2027-01-13T12:00:00Z 0 CONFIRMED"));
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
      assertThat(line, not(startsWith("BEGIN:VALARM ")));
      assertThat(line, not(startsWith("BEGIN:VALARM\u00E9")));
      assertThat(line, not(containsString("\n")));
      assertThat(line, not(containsString("\r")));
    }
    ICalendar calendar = Biweekly.parse(text).first();
    assertThat(
        event(calendar, "breeding-1").getSummary().getValue(),
        is("June,; b\\nBEGIN:VALARM \u00E9\u5B50\uD83D\uDC15".repeat(3) + ": breed"));
    assertThat(event(calendar, "breeding-1").getAlarms(), is(List.of()));
    assertThat(
        "no alarm but those of the test and the order",
        Pattern.compile("(?m)^BEGIN:VALARM").matcher(text).results().count(),
        is(3L));
  }

  private static List<String> calls(VEvent event) {
    return event.getAlarms().stream()
        .map(alarm -> alarm.getTrigger().getDuration() + " " + alarm.getDescription().getValue())
        .toList();
  }

  @Test
  void whatIsToBeDoneInTimeIsCalledToMindAndWhatIsCancelledIsNot() {
    OffsetDateTime breed = at("2027-01-14T10:00:00+01:00");
    OffsetDateTime now = at("2027-01-10T18:00:00+01:00");
    Plan plan =
        plan(
            null,
            List.of(
                new Commitment(
                    CommitmentKind.ORDER, breed.minusHours(20), breed, Sentence.of("Order")),
                new Commitment(
                    CommitmentKind.BOOK, breed.minusHours(18), breed, Sentence.of("Book")),
                new Commitment(
                    CommitmentKind.LEAVE, breed.minusHours(2), breed, Sentence.of("Leave"))),
            breed);
    AdvisedDates planned = dates(now, plan, Calendars.test(at("2027-01-12T08:00:00+01:00")));
    ICalendar calendar = read(planned);
    assertThat(calls(event(calendar, "test-1")), is(List.of("-PT12H Juniper: progesterone test")));
    assertThat(
        calls(event(calendar, "order-1")),
        is(List.of("-PT24H Juniper: order by 14:00", "-PT2H Juniper: order by 14:00")));
    assertThat(calls(event(calendar, "book-1")), hasSize(2));
    assertThat(calls(event(calendar, "leave-1")), hasSize(2));
    assertThat(calls(event(calendar, "breeding-1")), is(List.of()));
    ICalendar dropped = read(planned, dates(now.plusHours(1), null, null));
    assertThat(dropped.getEvents(), hasSize(5));
    dropped.getEvents().forEach(one -> assertThat(calls(one), is(List.of())));
  }

  /** Read by two programs of different makes, which agree on every entry and alarm. */
  @Test
  void aSubscriptionSaysItsNameAndHowOftenToAsk() throws IOException, ParserException {
    CalendarFeed.Season one =
        new CalendarFeed.Season(SEASON, List.of(dates(SampleAdvice.full())), NOW);
    CalendarFeed.Season none = new CalendarFeed.Season("s" + SEASON.substring(1), List.of(), NOW);
    String text = CalendarFeed.subscription("Tiderule: \u202EJuniper, é", List.of(one, none));
    assertThat(text, containsString("\r\nNAME:Tiderule: Juniper\\, é\r\n"));
    assertThat(text, containsString("\r\nREFRESH-INTERVAL;VALUE=DURATION:PT2H\r\n"));
    assertThat(text, not(containsString("COLOR")));
    ICalendar first = Biweekly.parse(text).first();
    assertThat(first.validate(ICalVersion.V2_0).toString(), is(""));
    Calendar second = new CalendarBuilder().build(new StringReader(text));
    assertThat(second.validate().getEntries(), is(Set.of()));
    assertThat(first.getEvents(), hasSize(6));
    assertThat(first.getJournals(), hasSize(0));
    TreeSet<String> byOne = new TreeSet<>();
    first
        .getEvents()
        .forEach(
            event ->
                byOne.add(
                    event.getUid().getValue()
                        + event.getSummary().getValue()
                        + event.getDescription().getValue()
                        + event.getAlarms().size()));
    TreeSet<String> byOther = new TreeSet<>();
    for (CalendarComponent component : second.getComponents()) {
      net.fortuna.ical4j.model.component.VEvent event =
          (net.fortuna.ical4j.model.component.VEvent) component;
      byOther.add(
          event.getRequiredProperty("UID").getValue()
              + event.getRequiredProperty("SUMMARY").getValue()
              + event.getRequiredProperty("DESCRIPTION").getValue()
              + event.getAlarms().size());
    }
    assertThat(byOther, is(byOne));
    ICalendar nothing = Biweekly.parse(CalendarFeed.subscription("x", List.of(none))).first();
    assertThat(nothing.getJournals(), hasSize(1));
  }

  @Test
  void aCalendarWithoutDatesSaysWhy() {
    ICalendar none = read();
    assertThat(none.getEvents(), is(List.of()));
    assertThat(none.getJournals().get(0).getSummary().getValue(), startsWith("No advice"));
    ICalendar undated = read(dates(at("2027-01-12T18:00:00+01:00"), null, null));
    assertThat(
        undated.getJournals().get(0).getSummary().getValue(),
        is(SampleAdvice.full().action().headline().toString()));
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
