package io.github.tiderule.engine;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.engine.advice.Action.Now;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.advice.Mistake;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.sentence.Phrasing;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whole decisions: what is advised, by when, and why no more is tested. */
class DecisionTest {

  private static final Tiderule ENGINE = Tiderule.create();

  private static Advice advise(TimedSeason season, String asOf) {
    return ENGINE.advise(season.asOf(asOf));
  }

  private static Plan plan(Advice advice) {
    assertThat(advice.breeding().plan(), notNullValue());
    return Objects.requireNonNull(advice.breeding().plan());
  }

  private static OnForecast forecast(Advice advice) {
    assertThat(plan(advice).forecast(), notNullValue());
    return Objects.requireNonNull(plan(advice).forecast());
  }

  private static OffsetDateTime local(String at) {
    return TimedSeason.at(at).atZone(TimedSeason.ZONE).toOffsetDateTime();
  }

  private static List<LocalDate> days(List<OffsetDateTime> times) {
    return times.stream().map(OffsetDateTime::toLocalDate).toList();
  }

  private static LocalDate day(String day) {
    return LocalDate.parse("2027-" + day);
  }

  /** Monday 1 March: the order for the best day closes on Tuesday, the laboratory needs longer. */
  private static TimedSeason slowLaboratory() {
    return TimedSeason.from("02-18")
        .value("02-24T08:00", 0.8)
        .value("02-26T08:00", 1.9)
        .value("02-27T08:00", 3.4)
        .value("02-28T08:00", 5.2)
        .with(Semen.CHILLED, Route.TRANSCERVICAL, 1)
        .order("14:00", 22, DayOfWeek.SUNDAY)
        .turnaround(34);
  }

  @Test
  void aResultThatComesAfterTheOrderClosesIsNotWaitedFor() {
    Advice advice = advise(slowLaboratory(), "03-01T08:00");
    OnForecast forecast = forecast(advice);
    assertThat(forecast.decideBy(), equalTo(local("03-02T14:00")));
    assertThat(forecast.resultAt(), equalTo(local("03-02T18:00")));
    assertThat(plan(advice).orderBy(), equalTo(local("03-02T14:00")));
    assertThat(forecast.cheaperMistake(), equalTo(Mistake.ACT));
    assertThat(forecast.acting(), greaterThan(forecast.waiting()));
    assertThat(
        forecast.acting() - forecast.waiting(),
        closeTo(forecast.waitingLoses() - forecast.actingLoses(), 1e-9));
    assertThat(forecast.text().toString(), containsString("acting is the cheaper mistake"));
    assertThat(advice.action().now(), equalTo(Now.BOOK));
    assertThat(
        advice.action().headline().toString(),
        startsWith("Decide on the forecast by Tue 2 Mar 14:00"));
    // the test would report on Tuesday at 18:00 and could change nothing
    NextTest test = advice.testing().next();
    if (test != null) {
      assertThat(test.resultAt().isAfter(forecast.decideBy()), equalTo(false));
      assertThat(test.gain(), greaterThanOrEqualTo(0.01));
    } else {
      assertThat(
          Objects.requireNonNull(advice.testing().noTestBecause()).toString(),
          containsString("before the decision is due"));
    }
  }

  @Test
  void aResultThatComesInTimeIsWaitedFor() {
    Advice advice = advise(slowLaboratory().turnaround(4), "03-01T08:00");
    assertThat(plan(advice).forecast(), nullValue());
    assertThat(advice.action().now(), equalTo(Now.TEST));
    NextTest test = Objects.requireNonNull(advice.testing().next());
    assertThat(
        test.resultAt().isAfter(Objects.requireNonNull(plan(advice).orderBy())), equalTo(false));
  }

  @Test
  void aWeekendWithoutDeliveryIsSeenOnWednesday() {
    TimedSeason season =
        TimedSeason.from("02-20")
            .value("02-28T08:00", 0.8)
            .value("03-02T08:00", 3.0)
            .value("03-03T08:00", 3.9)
            .with(Semen.CHILLED, Route.VAGINAL, 1)
            .order("14:00", 20, DayOfWeek.SATURDAY, DayOfWeek.SUNDAY)
            .turnaround(8);
    // Thursday's value reports at 16:00, two hours after the last box before the weekend
    Advice advice = advise(season, "03-03T17:00");
    assertThat(forecast(advice).decideBy(), equalTo(local("03-04T14:00")));
    assertThat(forecast(advice).resultAt(), equalTo(local("03-04T16:00")));
    assertThat(
        advice.action().headline().toString(),
        startsWith("Decide on the forecast by Thu 4 Mar 14:00"));
    // a day later that box is gone, and what is left is worth far less
    season.value("03-04T08:00", 4.8);
    Advice late = advise(season, "03-04T16:00");
    assertThat(days(plan(late).at()), contains(day("03-09")));
    assertThat(plan(late).eggShare().mean(), lessThan(plan(advice).eggShare().mean() - 0.2));
  }

  @Test
  void twoChilledDosesComeInOneBoxBeforeASundayWithoutDelivery() {
    TimedSeason season =
        TimedSeason.from("02-20")
            .value("02-28T08:00", 0.8)
            .value("03-03T08:00", 3.2)
            .value("03-04T08:00", 4.8)
            .with(Semen.CHILLED, Route.TRANSCERVICAL, 2)
            .order("14:00", 20, DayOfWeek.SUNDAY);
    Advice advice = advise(season, "03-04T16:00");
    Plan plan = plan(advice);
    assertThat(plan.at().get(0).toLocalDate(), equalTo(day("03-06")));
    assertThat(plan.orderBy(), equalTo(local("03-05T14:00")));
    List<String> kinds =
        plan.commitments().stream().map(one -> one.kind().word()).distinct().toList();
    assertThat(kinds, contains("order", "book"));
    plan.commitments().forEach(one -> assertThat(one.by().isAfter(one.forTime()), equalTo(false)));
    OffsetDateTime before = local("03-01T00:00");
    for (Commitment one : plan.commitments()) {
      assertThat(one.by().isBefore(before), equalTo(false));
      before = one.by();
    }
  }

  @Test
  void frozenDosesGoToTheHoursTheClinicWorks() {
    TimedSeason season =
        TimedSeason.from("02-26")
            .value("03-04T08:00", 0.8)
            .value("03-06T08:00", 1.5)
            .value("03-08T08:00", 3.6)
            .value("03-09T08:00", 5.6)
            .value("03-10T08:00", 9.2)
            .with(Semen.FROZEN, Route.TRANSCERVICAL, 2);
    for (int d = 8; d <= 20; d++) {
      if (d != 14) {
        season.available("03-%02dT08:00".formatted(d), "03-%02dT12:00".formatted(d));
      }
    }
    Advice advice = advise(season, "03-10T15:00");
    Plan plan = plan(advice);
    assertThat(plan.at(), hasSize(2));
    plan.at()
        .forEach(
            at -> {
              assertThat(at.getHour(), lessThanOrEqualTo(12));
              assertThat(at.getDayOfWeek(), not(equalTo(DayOfWeek.SUNDAY)));
            });
    plan.commitments().forEach(one -> assertThat(one.kind(), equalTo(CommitmentKind.BOOK)));
    // ovulation is proven: no value could move the days
    assertThat(advice.testing().next(), nullValue());
    assertThat(
        Objects.requireNonNull(advice.testing().noTestBecause()).toString(),
        containsString("Ovulation is proven"));
    assertThat(advice.action().headline().toString(), startsWith("Book the clinic by "));
  }

  @Test
  void aStudCollectedOnTuesdayOnlyIsOrderedForThen() {
    TimedSeason season =
        TimedSeason.from("02-24")
            .value("03-03T08:00", 0.9)
            .value("03-05T08:00", 2.6)
            .value("03-07T08:00", 5.6)
            .with(Semen.CHILLED, Route.TRANSCERVICAL, 1)
            .collectedOn("10:00", 24.5, DayOfWeek.TUESDAY);
    Advice advice = advise(season, "03-07T18:00");
    assertThat(plan(advice).orderBy(), equalTo(local("03-09T10:00")));
    assertThat(days(plan(advice).at()), contains(day("03-10")));
    // a day later the same box is a day older
    Plan.Alternative next = plan(advice).alternatives().get(0);
    assertThat(days(next.at()), contains(day("03-11")));
    assertThat(next.eggShare().mean(), lessThan(plan(advice).eggShare().mean()));
  }

  @Test
  void aLongDriveIsCountedBack() {
    TimedSeason season =
        TimedSeason.from("02-26")
            .value("03-05T08:00", 1.1)
            .value("03-07T08:00", 2.7)
            .value("03-08T08:00", 3.05)
            .travel(9)
            .available("03-10T17:00", "03-20T18:00");
    Advice advice = advise(season, "03-08T18:00");
    Commitment leave = plan(advice).commitments().get(0);
    assertThat(leave.kind(), equalTo(CommitmentKind.LEAVE));
    assertThat(leave.by(), equalTo(local("03-10T09:30")));
    assertThat(leave.forTime(), equalTo(local("03-10T18:30")));
    assertThat(plan(advice).notes(), empty());
  }

  @Test
  void everyOtherDayIsSaidOfAPlanOfSuchDays() {
    TimedSeason season =
        TimedSeason.from("03-01").value("03-03T08:30", 1.0).value("03-06T08:30", 5.8);
    Advice advice = advise(season, "03-06T17:00");
    assertThat(days(plan(advice).at()), contains(day("03-08"), day("03-10")));
    assertThat(
        Phrasing.PLAIN.say(plan(advice).notes()),
        contains("Mate her every other day from Mon 8 Mar while she stands."));
  }

  @Test
  void aLatePresentationIsBredAtOnce() {
    TimedSeason season =
        TimedSeason.unseen()
            .value("03-08T09:00", 28)
            .smear("03-08T09:00", 95, Neutrophils.NONE)
            .with(Semen.FRESH, Route.VAGINAL, null);
    Advice advice = advise(season, "03-08T12:00");
    assertThat(advice.action().now(), equalTo(Now.BREED));
    assertThat(plan(advice).at().get(0).toLocalDate(), equalTo(day("03-08")));
    assertThat(Objects.requireNonNull(advice.testing().next()).kind(), equalTo(TestKind.CYTOLOGY));
  }

  private static TimedSeason risen() {
    return TimedSeason.from("02-24")
        .value("03-03T08:00", 0.9)
        .value("03-05T08:00", 2.6)
        .value("03-07T08:00", 5.6);
  }

  @Test
  void anEarlyMatingCountsAndAnotherIsWorthIt() {
    TimedSeason season = risen().bred("03-04T10:00", Semen.NATURAL, Route.NATURAL);
    Advice advice = advise(season, "03-07T18:00");
    Bred bred = Objects.requireNonNull(advice.breeding().bred());
    assertThat(bred.count(), equalTo(1));
    assertThat(bred.another(), greaterThan(0.2));
    assertThat(
        plan(advice).eggShare().mean(), closeTo(bred.eggShare().mean() + bred.another(), 1e-9));
    Advice unbred = advise(risen(), "03-07T18:00");
    assertThat(unbred.breeding().bred(), nullValue());
    assertThat(
        plan(advice).eggShare().mean(),
        greaterThanOrEqualTo(plan(unbred).eggShare().mean() - 0.02));
  }

  @Test
  void aTimelyMatingNeedsNoOther() {
    TimedSeason season = risen().bred("03-09T10:00", Semen.NATURAL, Route.NATURAL);
    Advice advice = advise(season, "03-09T18:00");
    assertThat(advice.breeding().plan(), nullValue());
    Bred bred = Objects.requireNonNull(advice.breeding().bred());
    assertThat(bred.another(), equalTo(0.0));
    assertThat(bred.text().toString(), containsString("not worth it"));
    assertThat(advice.action().now(), equalTo(Now.PASSED));
    assertThat(
        advice.action().headline().toString(), containsString("Breeding is done. Due about "));
    assertThat(advice.course().whelping(), notNullValue());
    // long after the window the answer is the same
    Advice later = advise(season, "03-20T18:00");
    assertThat(later.action().now(), equalTo(Now.PASSED));
    assertThat(
        Objects.requireNonNull(later.breeding().bred()).text().toString(),
        containsString("scanned"));
  }

  @Test
  void aDoseGivenIsADoseLess() {
    TimedSeason season =
        risen()
            .bred("03-08T10:00", Semen.CHILLED, Route.TRANSCERVICAL)
            .with(Semen.CHILLED, Route.TRANSCERVICAL, 2);
    Advice one = advise(season, "03-08T18:00");
    assertThat(plan(one).at(), hasSize(1));
    // not sooner than about a day after the first
    assertThat(plan(one).at().get(0).isBefore(local("03-09T08:00")), equalTo(false));
    season.with(Semen.CHILLED, Route.TRANSCERVICAL, 1);
    Advice none = advise(season, "03-08T18:00");
    assertThat(none.breeding().plan(), nullValue());
    assertThat(
        Objects.requireNonNull(none.breeding().bred()).text().toString(),
        containsString("Every dose there was is given"));
  }

  @Test
  void moreDosesThanTimesIsSaid() {
    TimedSeason season =
        risen().with(Semen.FROZEN, Route.TRANSCERVICAL, 4).available("03-10T08:00", "03-10T12:00");
    Plan plan = plan(advise(season, "03-07T18:00"));
    assertThat(plan.at(), hasSize(1));
    assertThat(plan.notes().get(0).toString(), containsString("1 of 4"));
  }

  @Test
  void timesThatAreAllPastAreAskedFor() {
    TimedSeason season =
        risen().with(Semen.FRESH, Route.VAGINAL, 1).available("03-01T08:00", "03-02T18:00");
    Advice advice = advise(season, "03-07T18:00");
    assertThat(advice.breeding().plan(), nullValue());
    assertThat(advice.action().now(), equalTo(Now.ANSWER));
    assertThat(advice.action().headline().toString(), containsString("None of the times given"));
  }

  @Test
  void theOtherWaysDifferAndSayWhatTheyAreFor() {
    for (int doses = 1; doses <= 4; doses++) {
      TimedSeason season =
          TimedSeason.from("02-24")
              .value("03-03T08:00", 0.9)
              .value("03-05T08:00", 2.2)
              .with(Semen.CHILLED, Route.TRANSCERVICAL, doses);
      Plan plan = plan(advise(season, "03-05T18:00"));
      assertThat(plan.at(), hasSize(doses));
      List<List<OffsetDateTime>> all = new ArrayList<>(List.of(plan.at()));
      plan.alternatives().forEach(other -> all.add(other.at()));
      assertThat("doses " + doses, new HashSet<>(all), hasSize(all.size()));
      assertThat(plan.alternatives().size(), lessThanOrEqualTo(3));
      for (Plan.Alternative other : plan.alternatives()) {
        assertThat(other.note(), not(equalTo("")));
        if (other.note().toString().contains("safest")) {
          assertThat(other.eggShare().p10(), greaterThan(plan.eggShare().p10()));
        }
        if (other.note().toString().startsWith("one dose less")) {
          assertThat(other.at(), hasSize(doses - 1));
        }
        assertThat(
            other.eggShare().mean(), lessThanOrEqualTo(plan.eggShare().mean() + 0.005 + 1e-9));
      }
    }
  }

  /** What is said would change the days does, when the season is told with the other value. */
  @Test
  void theLatestValueAcrossItsThresholdChangesTheDays() {
    int tried = 0;
    for (double value : new double[] {1.6, 2.2, 3.0, 4.4}) {
      TimedSeason season = changing(value);
      Advice advice = advise(season, "03-06T18:00");
      for (Change change : advice.testing().wouldChange()) {
        Double edge = change.above() == null ? change.below() : change.above();
        if (change.observation().equals("next") || edge == null) {
          continue;
        }
        boolean above = change.above() != null;
        List<LocalDate> kept = days(plan(advice).at());
        double inside = edge * (above ? 0.8 : 1.25);
        double beyond = edge * (above ? 1.25 : 0.8);
        String where = value + ": " + change.ifThen();
        @Nullable Plan unless = advise(changing(beyond), "03-06T18:00").breeding().plan();
        if (unless == null) {
          // a value that falls or stands still there holds the semen back: no days at all
          tried++;
          continue;
        }
        Plan outside = unless;
        Plan within = plan(advise(changing(inside), "03-06T18:00"));
        assertThat(where, days(outside.at()), not(equalTo(kept)));
        boolean insideIsBetween = above ? inside > value : inside < value;
        if (insideIsBetween) {
          // inside, the days that stand are as good as any to within what counts as a change
          double loss = within.eggShare().mean() - share(within, kept);
          assertThat(where, loss, lessThan(0.03));
        }
        tried++;
      }
    }
    assertThat(tried, greaterThan(2));
  }

  /** The share of a plan on some days, of those an answer names; 0 where it names none. */
  private static double share(Plan plan, List<LocalDate> days) {
    if (days(plan.at()).equals(days)) {
      return plan.eggShare().mean();
    }
    return plan.alternatives().stream()
        .filter(other -> days(other.at()).equals(days))
        .mapToDouble(other -> other.eggShare().mean())
        .max()
        .orElse(0);
  }

  private static TimedSeason changing(double last) {
    return TimedSeason.from("02-24")
        .value("03-02T08:00", 0.7)
        .value("03-04T08:00", 1.2)
        .value("03-06T08:00", last)
        .with(Semen.CHILLED, Route.TRANSCERVICAL, 1);
  }

  @Test
  void theNextValueAcrossItsThresholdChangesTheDays() {
    int tried = 0;
    for (double value : new double[] {0.9, 1.2, 1.6, 2.2}) {
      Advice advice = advise(changing(value), "03-06T18:00");
      NextTest test = Objects.requireNonNull(advice.testing().next());
      for (Change change : advice.testing().wouldChange()) {
        Double edge = change.above() == null ? change.below() : change.above();
        if (!change.observation().equals("next") || edge == null) {
          continue;
        }
        String drawn = test.at().toLocalDateTime().toString().substring(5);
        String known = test.resultAt().toLocalDateTime().toString().substring(5);
        double beyond = edge * (change.above() != null ? 1.25 : 0.8);
        Advice then = advise(changing(value).value(drawn, beyond), known);
        String where = value + ": " + change.ifThen();
        assertThat(where, days(plan(then).at()), not(equalTo(days(plan(advice).at()))));
        tried++;
      }
    }
    assertThat(tried, greaterThan(1));
  }

  @Test
  void aTestIsNeverWorthLessThanNothingAndReportsInTheFuture() {
    for (double value : new double[] {0.5, 0.9, 1.6, 2.2, 4.4, 9}) {
      for (int doses = 1; doses <= 2; doses++) {
        TimedSeason season = changing(value).with(Semen.FROZEN, Route.TRANSCERVICAL, doses);
        NextTest test = advise(season, "03-06T18:00").testing().next();
        if (test != null) {
          assertThat(test.gain(), greaterThanOrEqualTo(0.0));
          assertThat(test.gain(), lessThan(1.0));
          assertThat(test.resultAt().isAfter(test.at()), equalTo(true));
          assertThat(test.at().isBefore(local("03-06T18:00")), equalTo(false));
        }
      }
    }
  }

  @Test
  void thresholdsAreSaidInBothUnits() {
    Advice advice = advise(changing(2.2), "03-06T18:00");
    assertThat(advice.testing().wouldChange().size(), greaterThanOrEqualTo(1));
    advice
        .testing()
        .wouldChange()
        .forEach(
            change -> {
              assertThat(change.ifThen().toString(), containsString(" ng/mL ("));
              assertThat(change.ifThen().toString(), containsString(" nmol/L)"));
              assertThat(change.plan().isEmpty(), equalTo(false));
            });
  }

  @Test
  void theSameRecordGivesTheSameDecision() {
    Advice once = advise(slowLaboratory(), "03-01T08:00");
    assertThat(advise(slowLaboratory(), "03-01T08:00"), equalTo(once));
  }
}
