package io.github.tiderule.api.report.text;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.Seasons;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Sentences as different people are told them. */
class TellingTest {

  private static final CycleRecord CYCLE =
      Seasons.text(
              """
              {"schema": "tiderule/cycle/1", "asOf": "2027-01-13T12:00:00Z",
               "zone": "Europe/Vienna", "firstBlood": {"on": "2027-01-01", "certainty": "seen"},
               "observations": [
                {"id": "p1", "kind": "progesterone", "at": "2027-01-08T07:30:00Z", "value": 0.6,
                 "unit": "ng/mL"},
                {"id": "noon", "kind": "progesterone", "at": "2027-01-11T07:30:00Z", "value": 2.6,
                 "unit": "ng/mL"},
                {"id": "p12", "kind": "progesterone", "at": "2027-01-12T07:30:00Z", "value": 3,
                 "unit": "ng/mL"},
                {"id": "p13", "kind": "progesterone", "at": "2027-01-12T07:30:00Z", "value": 4,
                 "unit": "ng/mL"},
                {"id": "c1", "kind": "cytology", "at": "2027-01-11T07:30:00Z",
                 "cornifiedPercent": 90},
                {"id": "LH1", "kind": "lh", "at": "2027-01-10T07:30:00Z", "result": "positive"}]}""")
          .cycle();

  private static final Telling TERMINAL = Telling.onTerminal(CYCLE);
  private static final Telling PERSON = Telling.toPerson(CYCLE, Words.of(Locale.UK));
  private static final Telling VET = Telling.toVet(CYCLE, Words.of(Locale.US));

  private static Sentence keys(String template, String... ids) {
    return Sentence.of(template, List.of(ids).stream().map(Part::key).toArray());
  }

  @Test
  void aPersonReadsWhatPeopleCallAnObservation() {
    assertThat(
        PERSON.say(keys("{} is used", "p1")), is("The progesterone of Fri 8 Jan 08:30 is used"));
    assertThat(
        PERSON.say(keys("First rise between {} and {}, to 2.6 ng/mL", "p1", "noon")),
        is(
            "First rise between the progesterone of Fri 8 Jan 08:30 and the progesterone of Mon 11"
                + " Jan 08:30, to 2.6 ng/mL"));
    assertThat(
        PERSON.say(keys("{} and {} agree", "LH1", "noon")),
        is(
            "The positive LH test of Sun 10 Jan 08:30 and the progesterone of Mon 11 Jan 08:30"
                + " agree"));
    assertThat(
        PERSON.say(keys("The smear {:of} is fully cornified", "c1")),
        is("The smear of Mon 11 Jan 08:30 is fully cornified"));
    assertThat(
        PERSON.named(List.of("p1", "noon")),
        is("The progesterone of Fri 8 Jan 08:30, Mon 11 Jan 08:30"));
    assertThat(PERSON.say(keys("{} waits", "p99")), is("p99 waits"));
  }

  @Test
  void anObservationWithItsDayIsNamedOnce() {
    Sentence told =
        Sentence.of(
            "Had progesterone {:of} been below 1.8 ng/mL",
            new Part.Drawn("noon", LocalDate.of(2027, 1, 11)));
    assertThat(PERSON.say(told), is("Had progesterone of Mon 11 Jan 08:30 been below 1.8 ng/mL"));
    assertThat(TERMINAL.say(told), is("Had progesterone noon of Mon 11 Jan been below 1.8 ng/mL"));
  }

  @Test
  void twoOfOneKindAtOneTimeKeepTheirKeys() {
    assertThat(
        PERSON.say(keys("{} and {} differ", "p12", "p13")),
        is(
            "The progesterone of Tue 12 Jan 08:30 (p12) and the progesterone of Tue 12 Jan 08:30"
                + " (p13) differ"));
    assertThat(
        PERSON.observation("p12"), is("the progesterone 3 ng/mL of Tue 12 Jan, 08:30 (p12)"));
  }

  @Test
  void aKeyStandsBehindItsNameForWhoLooksItUp() {
    assertThat(PERSON.observation("p1"), is("the progesterone 0.6 ng/mL of Fri 8 Jan, 08:30"));
    assertThat(VET.observation("p1"), is("the progesterone 0.6 ng/mL of Fri, Jan 8, 8:30 AM (p1)"));
    assertThat(TERMINAL.say(keys("{} is used", "p1")), is("p1 is used"));
  }

  @Test
  void behindOtherWordsNothingBeginsWithACapital() {
    Sentence told = keys("{} is used", "p1");
    assertThat(PERSON.sayWithin(told), is("the progesterone of Fri 8 Jan 08:30 is used"));
    assertThat(
        PERSON.say(Sentence.of("{}: {}", told, told)),
        is(
            "The progesterone of Fri 8 Jan 08:30 is used: the progesterone of Fri 8 Jan 08:30 is"
                + " used"));
  }

  @Test
  void daysTimesAndNumbersFollowTheCountry() {
    OffsetDateTime at = OffsetDateTime.parse("2027-03-04T14:30:00+01:00");
    Sentence told =
        Sentence.of(
            "Test on {}; {} in 1,420 cycles, 63.1 days or {}, by {}.",
            new Part.Time(at, Part.TimeForm.FULL),
            Part.both(1.8),
            0.5,
            new Part.Time(at, Part.TimeForm.SHORT));
    assertThat(
        PERSON.say(told),
        is(
            "Test on Thu 4 Mar 2027, 14:30; 1.8 ng/mL (5.72 nmol/L) in 1,420 cycles, 63.1 days or"
                + " 0.5, by Thu 4 Mar 14:30."));
    assertThat(
        VET.say(told),
        is(
            "Test on Thu, Mar 4, 2027, 2:30 PM; 1.8 ng/mL (5.72 nmol/L) in 1,420 cycles, 63.1 days"
                + " or 0.5, by Thu, Mar 4 2:30 PM."));
    Words german = Words.of(Locale.GERMANY);
    assertThat(
        Telling.toPerson(CYCLE, german).say(told),
        is(
            "Test on Thu 4 Mar 2027, 14:30; 1,8 ng/mL (5,72 nmol/L) in 1.420 cycles, 63,1 days or"
                + " 0,5, by Thu 4 Mar 14:30."));
    assertThat(german.number("%+.1f", -2.6), is("-2,6"));
  }

  @Test
  void whatSomebodyWroteIsNotChanged() {
    Sentence told = Sentence.of("The report says '{}'", Part.quote("p1: 3.2 on 2027-01-08"));
    assertThat(
        Telling.toPerson(CYCLE, Words.of(Locale.GERMANY)).say(told),
        is("The report says 'p1: 3.2 on 2027-01-08'"));
  }

  @Test
  void aDayOfAnotherSeasonHasItsYear() {
    Sentence told = Sentence.of("Seen on {}", LocalDate.of(2026, 12, 28));
    assertThat(PERSON.say(told), is("Seen on Mon 28 Dec"));
    assertThat(TERMINAL.say(told), is("Seen on Mon 28 Dec"));
    assertThat(
        PERSON.say(Sentence.of("Born on {}", LocalDate.of(2020, 12, 20))),
        is("Born on Sun 20 Dec 2020"));
  }

  @Test
  void aTextTakesNoSentenceThatWasNotTold() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Texts.ofReports().say("plan.commit.now", Sentence.of("Order now")));
  }
}
