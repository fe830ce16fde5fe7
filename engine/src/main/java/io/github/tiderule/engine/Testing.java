package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.days.DayTable;
import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.days.TestValue;
import io.github.tiderule.engine.timeline.CurveReading;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.Level;
import io.github.tiderule.rules.conclusion.TestDue;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.Method;
import io.github.tiderule.rules.fact.Series;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** When to test next, what that is worth, and what its result would change. */
final class Testing {

  private static final LocalTime USUAL_HOUR = LocalTime.of(8, 30);
  private static final LocalTime LAST_HOUR = LocalTime.of(17, 0);
  private static final LocalTime FIRST_HOUR = LocalTime.of(7, 0);

  /** Hours from draw to result when nobody says. */
  private static final double USUAL_TURNAROUND = 8;

  private final @Nullable NextTest nextTest;
  private final List<Change> changes;

  private Testing(@Nullable NextTest nextTest, List<Change> changes) {
    this.nextTest = nextTest;
    this.changes = changes;
  }

  @Nullable NextTest nextTest() {
    return nextTest;
  }

  List<Change> changes() {
    return changes;
  }

  static Testing of(
      Tools tools,
      CycleRecord cycle,
      Findings findings,
      Clock clock,
      TimeAxis axis,
      Evidence evidence,
      @Nullable Dating dating,
      @Nullable Breeding breeding,
      StageRunner runner,
      TraceBook trace) {
    StageResult due =
        runner.run(
            Stage.NEXT,
            findings.levels(),
            findings.accepted(),
            findings.acceptedProgesterone(),
            findings.findings(),
            findings.held(),
            dating == null ? List.of() : List.of(dating.forecast()),
            List.of(cycle.semenPlan(), cycle.laboratory()));
    trace.add(Stage.NEXT, due);
    Optional<StageResult.Ruled<TestDue>> first =
        due.ruled(TestDue.class)
            .min(
                Comparator.comparing(
                        (StageResult.Ruled<TestDue> ruled) -> ruled.conclusion().kind())
                    .thenComparing(ruled -> dueAt(ruled.conclusion(), cycle, findings))
                    .thenComparing(ruled -> ruled.rule().id()));
    if (first.isEmpty()) {
      return new Testing(null, List.of());
    }
    TestDue test = first.get().conclusion();
    Instant at = drawAt(test, cycle, findings, clock);
    List<String> because =
        due.ruled(TestDue.class)
            .filter(ruled -> ruled.conclusion().kind() == test.kind())
            .filter(ruled -> ruled.conclusion().hoursAfter() == test.hoursAfter())
            .map(ruled -> ruled.rule().id())
            .distinct()
            .toList();
    double gain = 0;
    List<Change> changes = List.of();
    Optional<ScoredPlan> plan = breeding == null ? Optional.empty() : breeding.best();
    if (test.kind() == TestKind.PROGESTERONE
        && dating != null
        && breeding != null
        && plan.isPresent()) {
      Series series = series(findings);
      CurveReading reading = tools.timeline().reading(evidence, series, dating.density());
      DayTable table = breeding.table();
      TestValue value =
          TestValue.of(
              table,
              cycle.semenPlan(),
              tools.planner().spacing(cycle.semenPlan()),
              breeding.forbidden(),
              plan.get());
      TestValue.Outcome outcome =
          value.outcome(axis.day(at), usable(table, resultAt(at, cycle)), reading);
      gain = outcome.gain();
      changes = changes(outcome, plan.get(), breeding, clock, at);
      trace.add(
          "next",
          EngineStep.TEST_VALUE,
          List.of(),
          List.of(
              "a progesterone test on "
                  + clock.dayAndTime(at)
                  + " is worth "
                  + Math.round(1000 * gain) / 10.0
                  + " in 100 eggs"));
    }
    return new Testing(
        new NextTest(test.kind().name().toLowerCase(Locale.ROOT), clock.offset(at), gain, because),
        changes);
  }

  /** The series of the latest number, which the next value should belong to. */
  private static Series series(Findings findings) {
    return findings.levels().stream()
        .max(Comparator.comparing(Level::at).thenComparing(Level::observation))
        .map(Level::series)
        .orElse(Series.of(null, Method.UNKNOWN));
  }

  private static Optional<Instant> lastDraw(Findings findings) {
    return findings.levels().stream().map(Level::at).max(Comparator.naturalOrder());
  }

  private static Instant dueAt(TestDue test, CycleRecord cycle, Findings findings) {
    Instant from =
        test.observations().isEmpty() ? cycle.asOf() : lastDraw(findings).orElse(cycle.asOf());
    return from.plusSeconds(Math.round(test.hoursAfter() * 3600));
  }

  /**
   * The draw: at the clock hour of the last one, on a day the laboratory works, not in the past.
   */
  private static Instant drawAt(TestDue test, CycleRecord cycle, Findings findings, Clock clock) {
    Instant due = dueAt(test, cycle, findings);
    LocalTime hour =
        lastDraw(findings)
            .map(at -> at.atZone(clock.zone()).toLocalTime().truncatedTo(ChronoUnit.MINUTES))
            .orElse(USUAL_HOUR);
    Instant now = cycle.asOf();
    LocalTime nowHour = now.atZone(clock.zone()).toLocalTime();
    boolean canDrawNow =
        !nowHour.isBefore(FIRST_HOUR)
            && nowHour.isBefore(LAST_HOUR)
            && (cycle.laboratory().opensOn().isEmpty()
                || cycle.laboratory().opensOn().contains(now.atZone(clock.zone()).getDayOfWeek()));
    if (!due.isAfter(now) && canDrawNow) {
      return nextHalfHour(now);
    }
    Instant earliest = due.isAfter(now) ? due.minus(Duration.ofHours(2)) : now;
    return clock.next(earliest.isBefore(now) ? now : earliest, hour, cycle.laboratory().opensOn());
  }

  private static Instant nextHalfHour(Instant at) {
    long halfHour = 1800;
    return Instant.ofEpochSecond((at.getEpochSecond() + halfHour - 1) / halfHour * halfHour);
  }

  private static Instant resultAt(Instant draw, CycleRecord cycle) {
    Double said = cycle.laboratory().turnaroundHours();
    double hours = said == null ? USUAL_TURNAROUND : said;
    return draw.plusSeconds(Math.round(hours * 3600));
  }

  /** The first slot that can still be used once the result is there. */
  private static int usable(DayTable table, Instant result) {
    int slot = 0;
    while (slot < table.slots().size()) {
      Instant orderBy = table.slots().get(slot).orderBy();
      Instant commit = orderBy == null ? table.slots().get(slot).middle() : orderBy;
      if (!commit.isBefore(result)) {
        break;
      }
      slot++;
    }
    return slot;
  }

  /** Where, by rising value, the first day of the plan moves to an earlier or a later day. */
  private static List<Change> changes(
      TestValue.Outcome outcome, ScoredPlan plan, Breeding breeding, Clock clock, Instant at) {
    List<TestValue.Step> steps = outcome.steps();
    int likeliest = 0;
    for (int i = 1; i < steps.size(); i++) {
      if (steps.get(i).probability() > steps.get(likeliest).probability()) {
        likeliest = i;
      }
    }
    int start = nearestSame(steps, plan, breeding, likeliest);
    List<Change> changes = new ArrayList<>();
    for (int i = start + 1; i < steps.size(); i++) {
      if (differs(breeding, steps.get(i).plan(), plan)) {
        double edge = Math.sqrt(steps.get(i - 1).ngPerMl() * steps.get(i).ngPerMl());
        changes.add(change(edge, true, steps.get(i).plan(), breeding, clock, at));
        break;
      }
    }
    for (int i = start - 1; i >= 0; i--) {
      if (differs(breeding, steps.get(i).plan(), plan)) {
        double edge = Math.sqrt(steps.get(i + 1).ngPerMl() * steps.get(i).ngPerMl());
        changes.add(change(edge, false, steps.get(i).plan(), breeding, clock, at));
        break;
      }
    }
    return changes;
  }

  /** The step nearest to the likeliest one after which the plan stays as it is. */
  private static int nearestSame(
      List<TestValue.Step> steps, ScoredPlan plan, Breeding breeding, int likeliest) {
    for (int away = 0; away < steps.size(); away++) {
      for (int i : new int[] {likeliest - away, likeliest + away}) {
        if (i >= 0 && i < steps.size() && !differs(breeding, steps.get(i).plan(), plan)) {
          return i;
        }
      }
    }
    return likeliest;
  }

  private static boolean differs(Breeding breeding, ScoredPlan a, ScoredPlan b) {
    DayTable table = breeding.table();
    return !table
        .slots()
        .get(a.slots().get(0))
        .day()
        .equals(table.slots().get(b.slots().get(0)).day());
  }

  private static Change change(
      double edge, boolean above, ScoredPlan plan, Breeding breeding, Clock clock, Instant at) {
    double rounded = Digits.significant(edge, 2);
    Instant first = breeding.table().slots().get(plan.slots().get(0)).middle();
    String words =
        "If progesterone on "
            + clock.day(at)
            + " is "
            + (above ? "above " : "below ")
            + Digits.bothUnits(rounded)
            + ", the first day becomes "
            + clock.day(first);
    return new Change(
        words, "next", above ? null : rounded, above ? rounded : null, breeding.times(plan));
  }
}
