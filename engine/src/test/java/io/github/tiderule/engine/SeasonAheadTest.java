package io.github.tiderule.engine;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.BeforeSeason;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.conclusion.care.CheckState;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.kennel.HealthTest;
import io.github.tiderule.rules.kennel.HealthTestKind;
import io.github.tiderule.rules.kennel.HealthTestResult;
import io.github.tiderule.rules.kennel.Whose;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** The season to come, from her intervals; reckoned by hand on a calendar. */
class SeasonAheadTest {

  private static final Tiderule TIDERULE = Tiderule.create();
  private static final Background ASKED = new Background(true, null, List.of(), null);

  private static Advice advice(String today, Background background, String... bloods) {
    return TIDERULE.advise(
        new CycleRecord(
            Instant.parse(today + "T11:00:00Z"),
            ZoneId.of("Europe/Vienna"),
            Female.unknown(),
            Arrays.stream(bloods).map(day -> new EarlierCycle(LocalDate.parse(day), null)).toList(),
            List.of(),
            new FirstBlood(null, Certainty.UNKNOWN),
            List.of(),
            SemenPlan.naturalUnlimited(),
            LaboratoryHours.unknown(),
            Outcome.unknown(),
            null,
            background));
  }

  private static BeforeSeason.NextSeason next(String today, String... bloods) {
    BeforeSeason before =
        Objects.requireNonNull(advice(today, ASKED, bloods).course().beforeSeason());
    return Objects.requireNonNull(before.next());
  }

  /**
   * 181, 184, 243 days: median 184; the last on 30 August 2026, and 184 days later is 2 March 2027.
   */
  @Test
  void theMedianIsNotCarriedAwayByOneLongInterval() {
    BeforeSeason.NextSeason next =
        next("2026-12-01", "2025-01-01", "2025-07-01", "2026-03-01", "2026-09-01");
    assertThat(next.expected(), is(LocalDate.of(2027, 3, 4)));
    assertThat(next.intervals(), is(3));
    assertThat(next.from(), is(LocalDate.of(2027, 2, 11)));
    assertThat(next.to(), is(LocalDate.of(2027, 5, 2)));
  }

  /** One interval of 181 days, and 42 days either side: 139 to 223 days after 1 July 2026. */
  @Test
  void oneIntervalIsWide() {
    BeforeSeason.NextSeason next = next("2026-10-01", "2026-01-01", "2026-07-01");
    assertThat(next.expected(), is(LocalDate.of(2026, 12, 29)));
    assertThat(next.from(), is(LocalDate.of(2026, 11, 17)));
    assertThat(next.to(), is(LocalDate.of(2027, 2, 9)));
    assertThat(next.text().toString(), not(containsString("past")));
  }

  @Test
  void withoutAnIntervalCommonPracticeStandsInAndSaysSo() {
    BeforeSeason.NextSeason next = next("2026-10-01", "2026-07-01");
    assertThat(next.intervals(), is(0));
    assertThat(next.text().toString(), containsString("common practice"));
    assertThat(next.to(), is(LocalDate.of(2027, 7, 1)));
  }

  @Test
  void aWindowThatIsPastSaysSo() {
    assertThat(
        next("2027-03-01", "2026-01-01", "2026-07-01").text().toString(), containsString("unseen"));
  }

  @Test
  void withoutASeasonThereIsNoNext() {
    BeforeSeason before =
        Objects.requireNonNull(advice("2026-10-01", ASKED).course().beforeSeason());
    assertThat(before.next(), is(nullValue()));
    assertThat(before.checks().get(0).state(), is(CheckState.DUE));
  }

  @Test
  void betweenSeasonsTheChecksAreWhatToDo() {
    Advice advice = advice("2026-10-01", ASKED, "2026-07-01");
    assertThat(advice.action().headline().toString(), containsString("No season has begun"));
    assertThat(advice.action().because().contains("CAR-402"), is(true));
    assertThat(advice.testing().next(), is(nullValue()));
  }

  @Test
  void nothingIsSaidWhereNothingWasAsked() {
    assertThat(
        advice("2026-10-01", Background.unknown(), "2026-07-01").course().beforeSeason(),
        is(nullValue()));
  }

  @Test
  void herIntervalsAreEnoughToBeToldOfTheNextSeason() {
    Advice advice = advice("2026-11-20", Background.unknown(), "2026-01-01", "2026-07-03");
    BeforeSeason before = Objects.requireNonNull(advice.course().beforeSeason());
    assertThat(Objects.requireNonNull(before.next()).expected(), is(LocalDate.parse("2027-01-02")));
    assertThat(before.checks().get(0).state(), is(CheckState.DUE));
    assertThat(advice.action().headline().toString(), containsString("No season has begun"));
  }

  /** 183 days from 3 July 2026 to 2 January 2027, and as many before: the next on 4 July 2027. */
  @Test
  void theNextSeasonIsToldOfOnceThisOneIsOver() {
    assertThat(bredOnce("2027-01-10").course().beforeSeason(), is(nullValue()));
    BeforeSeason over = Objects.requireNonNull(bredOnce("2027-03-10").course().beforeSeason());
    assertThat(Objects.requireNonNull(over.next()).expected(), is(LocalDate.parse("2027-07-04")));
    assertThat(over.checks().isEmpty(), is(true));
  }

  private static Advice bredOnce(String today) {
    return TIDERULE.advise(
        new CycleRecord(
            Instant.parse(today + "T11:00:00Z"),
            ZoneId.of("Europe/Vienna"),
            Female.unknown(),
            List.of(
                new EarlierCycle(LocalDate.parse("2026-01-01"), null),
                new EarlierCycle(LocalDate.parse("2026-07-03"), null)),
            List.of(),
            new FirstBlood(LocalDate.parse("2027-01-02"), Certainty.SEEN),
            List.of(),
            SemenPlan.naturalUnlimited(),
            LaboratoryHours.unknown()));
  }

  @Test
  void aPositiveBrucellaTestEndsTheTalk() {
    Background positive =
        new Background(
            true,
            null,
            List.of(
                new HealthTest(
                    Whose.STUD,
                    HealthTestKind.BRUCELLA,
                    LocalDate.of(2026, 9, 20),
                    HealthTestResult.POSITIVE,
                    null)),
            null);
    Advice advice = advice("2026-10-01", positive, "2026-07-01");
    assertThat(advice.action().headline().toString(), containsString("See a vet today"));
    assertThat(advice.cautions().get(0).level(), is(CautionLevel.STOP));
    assertThat(advice.course().beforeSeason(), is(nullValue()));
  }
}
