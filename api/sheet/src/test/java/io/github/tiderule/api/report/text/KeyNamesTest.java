package io.github.tiderule.api.report.text;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.format.Seasons;
import org.junit.jupiter.api.Test;

/** Keys in sentences, read as people call what they stand for. */
class KeyNamesTest {

  private static final String CYCLE =
      """
      {"schema": "tiderule/cycle/1", "asOf": "2027-01-13T12:00:00Z", "zone": "Europe/Vienna",
       "firstBlood": {"on": "2027-01-01", "certainty": "seen"},
       "observations": [
        {"id": "p1", "kind": "progesterone", "at": "2027-01-08T07:30:00Z", "value": 0.6, "unit": "ng/mL"},
        {"id": "p2", "kind": "progesterone", "at": "2027-01-11T07:30:00Z", "value": 2.6, "unit": "ng/mL"},
        {"id": "p12", "kind": "progesterone", "at": "2027-01-12T07:30:00Z", "value": 3, "unit": "ng/mL"},
        {"id": "p13", "kind": "progesterone", "at": "2027-01-12T07:30:00Z", "value": 4, "unit": "ng/mL"},
        {"id": "c1", "kind": "cytology", "at": "2027-01-11T07:30:00Z", "cornifiedPercent": 90},
        {"id": "LH1", "kind": "lh", "at": "2027-01-10T07:30:00Z", "result": "positive"},
        {"id": "N1", "kind": "progesterone", "at": "2027-01-07T07:30:00Z", "value": 0.5,
         "unit": "ng/mL", "laboratory": "N1"},
        {"id": "rise", "kind": "lh", "at": "2027-01-11T07:30:00Z", "result": "negative"},
        {"id": "NXT-012", "kind": "lh", "at": "2027-01-12T07:30:00Z", "result": "negative"}]}""";

  private final KeyNames names = new KeyNames(Seasons.text(CYCLE).cycle());

  @Test
  void aKeyBecomesAName() {
    assertThat(names.in("p1 is used"), is("The progesterone of Fri 8 Jan 08:30 is used"));
    assertThat(
        names.in("First rise between p1 and p2, to 2.6 ng/mL"),
        is(
            "First rise between the progesterone of Fri 8 Jan 08:30 and the progesterone of Mon 11"
                + " Jan 08:30, to 2.6 ng/mL"));
    assertThat(
        names.in("LH1 and p2 agree"),
        is(
            "The positive LH test of Sun 10 Jan 08:30 and the progesterone of Mon 11 Jan 08:30"
                + " agree"));
    assertThat(
        names.in("The smear c1 is fully cornified"),
        is("The smear of Mon 11 Jan 08:30 is fully cornified"));
    assertThat(
        names.in("Had progesterone p2 of Mon 11 Jan been below 1.8 ng/mL"),
        is("Had progesterone of Mon 11 Jan 08:30 been below 1.8 ng/mL"));
    assertThat(
        names.in("p1, p2: reported in nmol/L"),
        is("The progesterone of Fri 8 Jan 08:30, Mon 11 Jan 08:30: reported in nmol/L"));
  }

  @Test
  void twoOfOneKindAtOneTimeKeepTheirKeys() {
    assertThat(
        names.in("p12 and p13 differ"),
        is(
            "The progesterone of Tue 12 Jan 08:30 (p12) and the progesterone of Tue 12 Jan 08:30"
                + " (p13) differ"));
  }

  @Test
  void aKeyAfterItsTimeCanBeLeftOut() {
    assertThat(
        names.plain("Most of all the progesterone 0.6 ng/mL of Fri 8 Jan, 08:30 (p1): it moved"),
        is("Most of all the progesterone 0.6 ng/mL of Fri 8 Jan, 08:30: it moved"));
    for (String sentence :
        new String[] {
          "the progesterone 3 ng/mL of Tue 12 Jan, 08:30 (p12)", "at 08:30 (p99)", "held (p1)"
        }) {
      assertThat(names.plain(sentence), is(sentence));
    }
  }

  @Test
  void whatIsNoKeyOrMayBeAnotherWordStands() {
    for (String sentence :
        new String[] {
          "the progesterone 0.6 ng/mL of Fri 8 Jan, 08:30 (p1)",
          "The rise goes on",
          "NXT-012 waits for p3",
          "N1 reads higher; LH peak and LH10 stand",
          "p10 of the share, p1.5 and x-p1, p1-x, p1/2, P1",
        }) {
      assertThat(names.in(sentence), is(sentence));
    }
  }
}
