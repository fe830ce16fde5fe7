package io.github.tiderule.api.page.reasoning;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.format.Seasons;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class HabitsTest {

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

  private static Habit pastFive(Seasons.Season season) {
    return Habits.breeding(season.cycle(), season.reasoning().advice()).get(0);
  }

  private static LocalDate january(int day) {
    return LocalDate.of(2027, 1, day);
  }

  @Test
  void twoDaysAfterTheFirstValueAboveFive() {
    Habit habit =
        pastFive(
            season(
                "natural",
                value("p1", "10", "2.0"),
                value("p2", "12", "5.0"),
                value("p3", "13", "5.1"),
                value("p4", "14", "9.0")));
    assertThat(habit, is(new Habit("past-five", "p3", "", List.of(january(15)))));
  }

  @Test
  void threeDaysAfterItForFrozenSemen() {
    Habit habit = pastFive(season("frozen", value("p1", "10", "2.0"), value("p2", "13", "6.3")));
    assertThat(habit, is(new Habit("past-five-frozen", "p2", "", List.of(january(16)))));
  }

  @Test
  void theDayIsTheOneWhereSheIs() {
    // half past midnight in Vienna is still the day before in the unit's own zone
    Habit habit =
        pastFive(
            season(
                "natural",
                value("p1", "10", "2.0"),
                VALUE.formatted("p2", "13", "00:30", "6.0", ", \"unit\": \"ng/mL\"")));
    assertThat(habit.days(), is(List.of(january(15))));
  }

  @Test
  void aFirstValuePastItSaysSo() {
    Habit habit = pastFive(season("natural", value("p1", "13", "8.0")));
    assertThat(habit.note(), is("past-five-at-once"));
    assertThat(habit.days(), is(List.of(january(15))));
  }

  @Test
  void nothingPastItSaysNothing() {
    Habit habit = pastFive(season("natural", value("p1", "13", "4.9")));
    assertThat(habit, is(new Habit("past-five", "", "past-five-not-yet", List.of())));
  }

  @Test
  void aValueWithoutUnitAndALimitBelowAreNotRead() {
    Habit habit =
        pastFive(
            season(
                "natural",
                value("p1", "10", "2.0"),
                VALUE.formatted("p2", "12", "08:00", "9.0", ""),
                VALUE.formatted(
                    "p3", "13", "08:00", "8.0", ", \"unit\": \"ng/mL\", \"comparator\": \"<\"")));
    assertThat(habit.note(), is("past-five-not-yet"));
  }

  @Test
  void aLimitAboveIsPastIt() {
    Habit habit =
        pastFive(
            season(
                "natural",
                value("p1", "10", "2.0"),
                VALUE.formatted(
                    "p2", "13", "08:00", "20", ", \"unit\": \"ng/mL\", \"comparator\": \">\"")));
    assertThat(habit.from(), is("p2"));
  }

  @Test
  void nanomolesAreNotTakenForNanograms() {
    Habit habit =
        pastFive(
            season(
                "natural",
                VALUE.formatted("p1", "10", "08:00", "6.0", ", \"unit\": \"nmol/L\""),
                VALUE.formatted("p2", "13", "08:00", "16.0", ", \"unit\": \"nmol/L\"")));
    assertThat(habit.from(), is("p2"));
  }

  @Test
  void fixedDaysCountFromFirstBlood() {
    Seasons.Season season = season("natural", value("p1", "13", "3.0"));
    List<Habit> habits = Habits.breeding(season.cycle(), season.reasoning().advice());
    assertThat(
        habits.get(1),
        is(
            new Habit(
                "odd-days", "2027-01-03", "", List.of(january(12), january(14), january(16)))));
    assertThat(habits.get(2).days(), is(List.of(january(13), january(15), january(17))));
  }

  @Test
  void fixedDaysFromAGuessSayThatItIsOne() {
    Seasons.Season season = Seasons.text(SEASON.formatted("estimated", "natural", ""));
    assertThat(
        Habits.breeding(season.cycle(), season.reasoning().advice()).get(1).note(),
        is("first-blood-guess"));
  }

  @Test
  void withoutFirstBloodThereAreNoFixedDays() {
    Seasons.Season season =
        Seasons.text(
            """
            {"schema": "tiderule/cycle/1", "asOf": "2027-01-15T12:00:00+01:00",
             "zone": "Europe/Vienna", "firstBlood": {"certainty": "unknown"}, "observations": []}
            """);
    assertThat(
        Habits.breeding(season.cycle(), season.reasoning().advice()).get(1),
        is(new Habit("odd-days", "", "no-first-blood", List.of())));
    assertThat(Habits.whelping(season.cycle(), season.reasoning().advice()), is(nullValue()));
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
    Habit habit =
        Objects.requireNonNull(Habits.whelping(season.cycle(), season.reasoning().advice()));
    assertThat(
        habit, is(new Habit("whelping", "2027-01-14", "", List.of(LocalDate.of(2027, 3, 18)))));
  }
}
