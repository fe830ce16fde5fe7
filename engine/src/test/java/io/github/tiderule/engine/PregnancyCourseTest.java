package io.github.tiderule.engine;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Happened;
import io.github.tiderule.engine.advice.course.Pregnancy;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** A pregnancy, bred to whelped: what stays after a stop, and what is told once it is over. */
class PregnancyCourseTest {

  private static final Tiderule TIDERULE = Tiderule.create();

  /** Ovulation on 14 or 15 March. */
  private static TimedSeason season() {
    return TimedSeason.from("03-01")
        .value("03-11T08:00", 1.1)
        .value("03-13T08:00", 2.3)
        .value("03-14T08:00", 3.4)
        .value("03-15T08:00", 5.6);
  }

  private static TimedSeason bred() {
    return season().bred("03-17T10:00", Semen.NATURAL, Route.NATURAL);
  }

  private static Pregnancy pregnancy(Advice advice) {
    return Objects.requireNonNull(advice.course().pregnancy());
  }

  private static List<String> flags(Advice advice) {
    return pregnancy(advice).redFlags().stream().map(one -> one.kind().word()).distinct().toList();
  }

  private static List<String> due(Advice advice) {
    return pregnancy(advice).milestones().stream().map(one -> one.kind().word()).toList();
  }

  @Test
  void aStopInPregnancyKeepsItsDatesAndRedFlags() {
    Advice well = TIDERULE.advise(bred().asOf("04-15T12:00"));
    Advice ill = TIDERULE.advise(bred().sign("04-15T11:00", SignKind.COLLAPSE).asOf("04-15T12:00"));
    assertThat(ill.action().now(), is(Action.Now.VET));
    assertThat(ill.cautions().get(0).level(), is(CautionLevel.STOP));
    assertThat(ill.breeding().days(), is(empty()));
    assertThat(ill.breeding().plan(), is(nullValue()));
    assertThat(due(ill), hasItems("weighing", "box-and-phone", "radiograph", "temperature-chart"));
    assertThat(pregnancy(ill), is(pregnancy(well)));
    assertThat(ill.course().whelping(), is(well.course().whelping()));
    assertThat(ill.course().whelping(), is(notNullValue()));
  }

  @Test
  void aStopAtWhelpingKeepsTheCardAndDropsThePlanningOfACaesarean() {
    Advice well = TIDERULE.advise(bred().asOf("05-16T12:00"));
    Advice strains =
        TIDERULE.advise(bred().sign("05-16T11:00", SignKind.STRAINING).asOf("05-16T12:00"));
    assertThat(well.course().caesarean(), is(notNullValue()));
    assertThat(strains.course().caesarean(), is(nullValue()));
    assertThat(flags(strains), contains("pregnancy", "whelping", "after-whelping"));
    assertThat(strains.course().whelping(), is(notNullValue()));
  }

  @Test
  void aStopBeforeOvulationHasPassedSaysNothingOfAPregnancy() {
    Advice ill =
        TIDERULE.advise(
            season()
                .bred("03-15T10:00", Semen.NATURAL, Route.NATURAL)
                .sign("03-15T11:00", SignKind.COLLAPSE)
                .asOf("03-15T12:00"));
    assertThat(ill.action().now(), is(Action.Now.VET));
    assertThat(ill.course().whelping(), is(nullValue()));
    assertThat(ill.course().pregnancy(), is(nullValue()));
  }

  @Test
  void aTreatedSeasonHasRedFlagsAndNoDates() {
    Advice treated =
        TIDERULE.advise(
            bred()
                .scan("04-14T10:00", ScanFinding.HEARTBEATS, 4)
                .treated("02-20")
                .asOf("04-15T12:00"));
    assertThat(treated.course().whelping(), is(nullValue()));
    assertThat(due(treated), is(empty()));
    assertThat(pregnancy(treated).happened(), is(empty()));
    assertThat(flags(treated), hasItem("pregnancy"));
  }

  @Test
  void onceSheHasWhelpedItIsToldWhatHappenedAndNothingIsTested() {
    Advice whelped =
        TIDERULE.advise(
            bred()
                .scan("04-14T10:00", ScanFinding.HEARTBEATS, 4)
                .ended(new Outcome(true, LocalDate.parse("2027-05-17"), 5, 4))
                .asOf("05-25T12:00"));
    assertThat(due(whelped), is(empty()));
    assertThat(
        pregnancy(whelped).happened().stream().map(one -> one.text().toString()).toList(),
        contains(
            "Bred by mating",
            "Scan: heartbeats, 4 pups counted",
            "She whelped, 5 pups, 4 born alive"));
    assertThat(
        pregnancy(whelped).happened().stream().map(Happened::daysAfterOvulation).toList(),
        contains(after(whelped, "03-17"), after(whelped, "04-14"), after(whelped, "05-17")));
    assertThat(flags(whelped), contains("after-whelping"));
    assertThat(whelped.testing().next(), is(nullValue()));
    assertThat(
        Objects.requireNonNull(whelped.testing().noTestBecause()).toString(),
        containsString("What came of this season is known"));
  }

  @Test
  void onceSheIsKnownToBeEmptyNothingIsTestedAndNoDayIsDue() {
    TimedSeason empty = bred().scan("04-20T10:00", ScanFinding.NOT_PREGNANT, 0);
    Advice advice = TIDERULE.advise(empty.asOf("04-21T12:00"));
    assertThat(due(advice), is(empty()));
    assertThat(pregnancy(advice).redFlags(), is(empty()));
    assertThat(
        pregnancy(advice).happened().stream().map(one -> one.text().toString()).toList(),
        hasItem("Scan: not pregnant"));
    assertThat(advice.course().whelping(), is(nullValue()));
    assertThat(advice.testing().next(), is(nullValue()));
    assertThat(advice.action().headline().toString(), not(containsString("Test")));
  }

  /** hollinshead-2017: 65 days from the LH peak, with a spread of 1.9 days. */
  @Test
  void fromTheLhPeakAloneSheWhelpsAbout65DaysLater() {
    Advice advice =
        TIDERULE.advise(
            TimedSeason.from("03-01")
                .lh("03-12T08:00", false)
                .lh("03-13T08:00", true)
                .lh("03-14T08:00", false)
                .value("03-13T08:00", 2.2)
                .value("03-15T08:00", 5.0)
                .bred("03-17T10:00", Semen.NATURAL, Route.NATURAL)
                .asOf("04-15T12:00"));
    Whelping whelping = Objects.requireNonNull(advice.course().whelping());
    OffsetDateTime peak = Objects.requireNonNull(advice.timing().lhPeak()).median();
    assertThat(days(peak, whelping.median()), is(closeTo(65, 0.4)));
    assertThat(days(whelping.p05(), whelping.p95()) / (2 * 1.645), is(closeTo(1.9, 0.25)));
  }

  private static int after(Advice advice, String day) {
    LocalDate ovulated = Objects.requireNonNull(advice.timing().ovulation()).median().toLocalDate();
    return (int) ChronoUnit.DAYS.between(ovulated, LocalDate.parse("2027-" + day));
  }

  private static double days(OffsetDateTime from, OffsetDateTime to) {
    return Duration.between(from, to).toMinutes() / (24.0 * 60);
  }
}
