package io.github.tiderule.cases.fuzz;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;

import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.DayProbability;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Patterns;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;

/** What holds of every answer to a file that was read: finite, consistent, in order. */
final class Sound {

  static final Tiderule ENGINE = Tiderule.create();

  /** Shares in an answer are rounded to four decimals, each on its own. */
  private static final double ROUNDING = 0.5e-4;

  private static final double ARITHMETIC = 1e-9;

  private Sound() {}

  /** Advises on a record, and holds the answer and what is written of it to what must hold. */
  static Advice advice(Tiderule engine, CycleRecord cycle) {
    Advice advice = engine.advise(cycle);
    consistent(advice);
    Shown.texts(Shown.json(AdviceJson.text(advice, Layout.ONE_LINE)));
    Shown.text(AdviceReport.text(cycle, advice));
    return advice;
  }

  private static void consistent(Advice advice) {
    order(advice.asOf(), advice.validUntil());
    Quantiles peak = advice.timing().lhPeak();
    if (peak != null) {
      order(peak.p05(), peak.p25(), peak.median(), peak.p75(), peak.p95());
    }
    Ovulation ovulation = advice.timing().ovulation();
    if (ovulation != null) {
      ovulation(ovulation);
    }
    Whelping whelping = advice.course().whelping();
    if (whelping != null) {
      order(whelping.p05(), whelping.median(), whelping.p95());
      sums(whelping.byDay(), 1);
    }
    for (int i = 0; i < advice.breeding().days().size(); i++) {
      day(advice.breeding().days().get(i), i + 1);
    }
    Plan plan = advice.breeding().plan();
    if (plan != null) {
      plan(plan, advice.asOf());
    }
    NextTest test = advice.testing().next();
    if (test != null) {
      order(advice.asOf(), test.at(), test.resultAt());
      assertThat("gain " + test.gain(), test.gain() >= 0 && test.gain() <= 1);
    }
  }

  private static void ovulation(Ovulation ovulation) {
    order(ovulation.p05(), ovulation.p25(), ovulation.median(), ovulation.p75(), ovulation.p95());
    sums(ovulation.byDay(), 1 - share(ovulation.noOvulationProbability()));
    Patterns patterns = ovulation.patterns();
    double all =
        share(patterns.ordinary()) + share(patterns.plateau()) + share(patterns.noOvulation());
    assertThat(patterns.toString(), all, closeTo(1, 3 * ROUNDING + ARITHMETIC));
  }

  private static void day(BreedingDay day, int rank) {
    assertThat(day.toString(), day.rank() == rank);
    order(day.from(), day.to());
    share(day.eggShare());
  }

  private static void plan(Plan plan, OffsetDateTime asOf) {
    assertThat("a plan has a time", !plan.at().isEmpty());
    order(plan.at().toArray(OffsetDateTime[]::new));
    order(asOf, plan.at().get(0));
    share(plan.eggShare());
    for (Plan.Alternative other : plan.alternatives()) {
      order(other.at().toArray(OffsetDateTime[]::new));
      share(other.eggShare());
    }
  }

  private static void share(EggShare share) {
    share(share.mean());
    share(share.p10());
  }

  private static double share(double value) {
    assertThat("a share is " + value, value >= 0 && value <= 1);
    return value;
  }

  private static void sums(List<DayProbability> days, double wanted) {
    double sum = 0;
    for (int i = 0; i < days.size(); i++) {
      sum += share(days.get(i).probability());
      if (i > 0) {
        LocalDate before = days.get(i - 1).day();
        assertThat(before + " and " + days.get(i).day(), before.isBefore(days.get(i).day()));
      }
    }
    assertThat(
        "sum over " + days.size() + " days",
        sum,
        closeTo(wanted, (days.size() + 1) * ROUNDING + ARITHMETIC));
  }

  private static void order(OffsetDateTime... times) {
    for (int i = 1; i < times.length; i++) {
      assertThat(Arrays.toString(times), !times[i].isBefore(times[i - 1]));
    }
  }
}
