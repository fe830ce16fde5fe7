package io.github.tiderule.format.json;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.engine.advice.reasoning.DayCount;
import io.github.tiderule.format.Seasons;
import io.github.tiderule.rules.conclusion.care.Thumb;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** What rules of thumb make of a season stands in the answer. */
class DayCountsTest {

  private static final String SEASON =
      """
      {"schema": "tiderule/cycle/1", "asOf": "2027-01-15T12:00:00+01:00", "zone": "Europe/Vienna",
       "firstBlood": {"on": "2027-01-03", "certainty": "%s"}, "breeding": {"semen": "%s"},
       "observations": [%s]}
      """;
  private static final String VALUE =
      """
      {"id": "%s", "kind": "progesterone", "at": "2027-01-%sT%s:00+01:00", "value": %s%s,
       "method": "ria", "laboratory": "A"}\
      """;

  private static String value(String id, String day, String value) {
    return VALUE.formatted(id, day, "08:00", value, ", \"unit\": \"ng/mL\"");
  }

  private static Seasons.Season season(String semen, String... observations) {
    return Seasons.text(SEASON.formatted("seen", semen, String.join(", ", observations)));
  }

  private static List<DayCount> counts(Seasons.Season season, Thumb kind) {
    return season.reasoning().advice().reasoning().dayCounts().stream()
        .filter(one -> one.kind() == kind)
        .toList();
  }

  private static DayCount pastFive(Seasons.Season season) {
    return counts(season, Thumb.FIRST_VALUE).get(0);
  }

  private static String limit(DayCount count) {
    return Objects.requireNonNull(count.but()).toString();
  }

  private static LocalDate january(int day) {
    return LocalDate.of(2027, 1, day);
  }

  @Test
  void twoDaysAfterTheFirstValueAboveFive() {
    DayCount count =
        pastFive(
            season(
                "natural",
                value("p1", "10", "2.0"),
                value("p2", "12", "5.0"),
                value("p3", "13", "5.1"),
                value("p4", "14", "9.0")));
    assertThat(count.days(), is(List.of(january(15))));
    assertThat(count.observations(), is(List.of("p3")));
    assertThat(count.from(), is(january(13)));
    assertThat(count.but(), is(nullValue()));
  }

  @Test
  void threeDaysAfterItForFrozenSemen() {
    DayCount count = pastFive(season("frozen", value("p1", "10", "2.0"), value("p2", "13", "6.3")));
    assertThat(count.days(), is(List.of(january(16))));
    assertThat(count.observations(), is(List.of("p2")));
  }

  @Test
  void theDayIsTheOneWhereSheIs() {
    // half past midnight in Vienna is still the day before in the unit's own zone
    DayCount count =
        pastFive(
            season(
                "natural",
                value("p1", "10", "2.0"),
                VALUE.formatted("p2", "13", "00:30", "6.0", ", \"unit\": \"ng/mL\"")));
    assertThat(count.days(), is(List.of(january(15))));
  }

  @Test
  void aFirstValuePastItSaysSo() {
    DayCount count = pastFive(season("natural", value("p1", "13", "8.0")));
    assertThat(limit(count), containsString("first value of all"));
    assertThat(count.days(), is(List.of(january(15))));
  }

  @Test
  void nothingPastItSaysNothing() {
    DayCount count = pastFive(season("natural", value("p1", "13", "4.9")));
    assertThat(count.days(), is(empty()));
    assertThat(limit(count), containsString("it says nothing yet"));
  }

  @Test
  void aValueWithoutUnitAndALimitBelowAreNotRead() {
    DayCount count =
        pastFive(
            season(
                "natural",
                value("p1", "10", "2.0"),
                VALUE.formatted("p2", "12", "08:00", "9.0", ""),
                VALUE.formatted(
                    "p3", "13", "08:00", "8.0", ", \"unit\": \"ng/mL\", \"comparator\": \"<\"")));
    assertThat(limit(count), containsString("it says nothing yet"));
  }

  @Test
  void aLimitAboveIsPastIt() {
    DayCount count =
        pastFive(
            season(
                "natural",
                value("p1", "10", "2.0"),
                VALUE.formatted(
                    "p2", "13", "08:00", "20", ", \"unit\": \"ng/mL\", \"comparator\": \">\"")));
    assertThat(count.observations(), is(List.of("p2")));
  }

  @Test
  void nanomolesAreNotTakenForNanograms() {
    DayCount count =
        pastFive(
            season(
                "natural",
                VALUE.formatted("p1", "10", "08:00", "6.0", ", \"unit\": \"nmol/L\""),
                VALUE.formatted("p2", "13", "08:00", "16.0", ", \"unit\": \"nmol/L\"")));
    assertThat(count.observations(), is(List.of("p2")));
  }

  @Test
  void fixedDaysCountFromFirstBlood() {
    Seasons.Season season = season("natural", value("p1", "13", "3.0"));
    List<DayCount> counts = counts(season, Thumb.FIXED_DAYS);
    assertThat(counts.get(0).from(), is(january(3)));
    assertThat(counts.get(0).days(), is(List.of(january(12), january(14), january(16))));
    assertThat(counts.get(1).days(), is(List.of(january(13), january(15), january(17))));
  }

  @Test
  void fixedDaysFromAGuessSayThatItIsOne() {
    Seasons.Season season = Seasons.text(SEASON.formatted("estimated", "natural", ""));
    assertThat(limit(counts(season, Thumb.FIXED_DAYS).get(0)), containsString("is itself a guess"));
  }

  @Test
  void withoutFirstBloodThereAreNoFixedDays() {
    Seasons.Season season =
        Seasons.text(
            """
            {"schema": "tiderule/cycle/1", "asOf": "2027-01-15T12:00:00+01:00",
             "zone": "Europe/Vienna", "firstBlood": {"certainty": "unknown"}, "observations": []}
            """);
    assertThat(counts(season, Thumb.FIXED_DAYS).get(0).days(), is(empty()));
    assertThat(counts(season, Thumb.WHELPING), is(empty()));
  }

  @Test
  void sixtyThreeDaysCountFromTheFirstMatingDone() {
    Seasons.Season season =
        season(
            "natural",
            value("p1", "10", "3.0"),
            value("p2", "12", "8.5"),
            """
            {"id": "b1", "kind": "breeding", "at": "2027-01-14T10:00:00+01:00", "semen": "natural",
             "route": "natural"}""");
    DayCount count = counts(season, Thumb.WHELPING).get(0);
    assertThat(count.observations(), is(List.of("b1")));
    assertThat(count.days(), is(List.of(LocalDate.of(2027, 3, 18))));
  }
}
