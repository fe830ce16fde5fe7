package io.github.tiderule.api.calendar;

import static io.github.tiderule.api.calendar.Calendars.advice;
import static io.github.tiderule.api.calendar.Calendars.at;
import static io.github.tiderule.api.calendar.Calendars.dates;
import static io.github.tiderule.api.calendar.Calendars.event;
import static io.github.tiderule.api.calendar.Calendars.plan;
import static io.github.tiderule.api.calendar.Calendars.read;
import static io.github.tiderule.api.calendar.Calendars.shown;
import static io.github.tiderule.api.calendar.Calendars.test;
import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;

import biweekly.ICalendar;
import biweekly.component.VEvent;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What becomes of entries by one advice after the other. */
class CalendarHistoryTest {

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
  void aBookingThatIsNoLongerNeededIsCancelled() {
    OffsetDateTime breed = at("2027-01-14T10:00:00+01:00");
    OffsetDateTime by = at("2027-01-13T14:00:00+01:00");
    AdvisedDates one =
        dates(
            at("2027-01-11T18:00:00+01:00"),
            plan(
                null,
                List.of(
                    new Commitment(CommitmentKind.BOOK, by, breed, Sentence.of("Book the clinic"))),
                breed),
            null);
    AdvisedDates later =
        dates(
            at("2027-01-12T18:00:00+01:00"),
            plan(
                null,
                List.of(
                    new Commitment(
                        CommitmentKind.BOOK,
                        by.plusDays(1),
                        breed,
                        Sentence.of("Book the clinic"))),
                breed),
            null);
    AdvisedDates none = dates(at("2027-01-12T20:00:00+01:00"), plan(null, breed), null);
    assertThat(shown(event(read(one, later), "book-1")), is("2027-01-14T12:00:00Z 1 CONFIRMED"));
    assertThat(
        shown(event(read(one, later, none), "book-1")), is("2027-01-14T12:00:00Z 2 CANCELLED"));
  }
}
