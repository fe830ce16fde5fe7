package io.github.tiderule.engine.testing;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.days.TestValue;
import io.github.tiderule.engine.explain.TraceBook;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dating;
import io.github.tiderule.engine.season.Findings;
import io.github.tiderule.engine.season.StageRunner;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.testing.DrawTimes.Draw;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.Foresight;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.SameBlood;
import io.github.tiderule.rules.conclusion.TestDue;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.TestingDone;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** When to test next, what that is worth, and what its result would change. */
public final class Testing {

  private final @Nullable NextTest nextTest;
  private final @Nullable String noTestBecause;
  private final @Nullable OnForecast forecast;
  private final List<Change> changes;

  private Testing(
      @Nullable NextTest nextTest,
      @Nullable String noTestBecause,
      @Nullable OnForecast forecast,
      List<Change> changes) {
    this.nextTest = nextTest;
    this.noTestBecause = noTestBecause;
    this.forecast = forecast;
    this.changes = changes;
  }

  public @Nullable NextTest nextTest() {
    return nextTest;
  }

  /** Why no test is advised; null where one is. */
  public @Nullable String noTestBecause() {
    return noTestBecause;
  }

  /** A decision due before the next result; null where there is none. */
  public @Nullable OnForecast forecast() {
    return forecast;
  }

  public List<Change> changes() {
    return changes;
  }

  public static Testing of(
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
            cycle.earlierCycles(),
            dating == null ? List.of() : List.of(dating.forecast()),
            List.of(cycle.semenPlan(), cycle.laboratory()));
    trace.add(Stage.NEXT, due);
    DrawTimes times = new DrawTimes(tools, cycle, findings, clock);
    Optional<StageResult.Ruled<TestDue>> first =
        due.ruled(TestDue.class)
            .min(
                Comparator.comparing(
                        (StageResult.Ruled<TestDue> ruled) -> ruled.conclusion().kind())
                    .thenComparing(ruled -> times.due(ruled.conclusion()))
                    .thenComparing(ruled -> ruled.rule().id()));
    @Nullable Draw floor = first.map(ruled -> times.of(ruled.conclusion())).orElse(null);
    List<String> because = first.map(ruled -> because(due, ruled.conclusion())).orElse(List.of());
    Optional<ScoredPlan> plan = breeding == null ? Optional.empty() : breeding.best();
    if (dating == null || breeding == null || plan.isEmpty()) {
      return floor == null
          ? new Testing(null, ended(due), null, List.of())
          : new Testing(next(clock, floor, 0, because, false), null, null, List.of());
    }
    Foresight foresight = tools.timeline().foresight(evidence, dating.estimate());
    Series series = series(findings);
    boolean lhOnSameBlood =
        due.all(SameBlood.class).stream()
            .anyMatch(one -> one.drawn() == TestKind.PROGESTERONE && one.also() == TestKind.LH);
    TestChoice choice =
        new TestChoice(tools, clock, axis, foresight, series, breeding, plan.get(), lhOnSameBlood);
    Set<TestKind> done =
        due.all(TestingDone.class).stream().map(TestingDone::kind).collect(Collectors.toSet());
    TestChoice.Chosen chosen =
        choice.choose(times, floor, done, mustBeMade(floor, findings, breeding));
    // where rules have ended progesterone testing there is no result to wait for
    @Nullable OnForecast forecast =
        done.contains(TestKind.PROGESTERONE)
            ? null
            : choice
                .soonest(times, floor)
                .map(soonest -> forecast(tools, cycle, clock, breeding, soonest))
                .orElse(null);
    trace.add("next", EngineStep.TEST_VALUE, List.of(), choice.sentences());
    Thresholds thresholds =
        new Thresholds(tools, cycle, clock, axis, foresight, breeding, plan.get());
    TestChoice.@Nullable Valued test = chosen.test();
    List<Change> changes = new ArrayList<>();
    if (test != null && test.draw().kind() == TestKind.PROGESTERONE) {
      changes.addAll(thresholds.ofNext(test, choice.coming(test.draw())));
    }
    changes.addAll(thresholds.ofLatest(evidence));
    if (test == null) {
      return new Testing(null, stopped(tools, due, forecast), forecast, changes);
    }
    List<String> why = chosen.asTheTradeHasIt() ? because : List.of(EngineStep.TEST_VALUE.id());
    // the trade's own wish for LH is met by the blood that is drawn anyway
    boolean lh =
        test.withLh()
            || (lhOnSameBlood
                && test.draw().kind() == TestKind.PROGESTERONE
                && due.all(TestDue.class).stream().anyMatch(one -> one.kind() == TestKind.LH));
    List<String> reasons = new ArrayList<>(why);
    if (lh) {
      due.ruled(SameBlood.class).map(ruled -> ruled.rule().id()).forEach(reasons::add);
    }
    return new Testing(next(clock, test.draw(), test.gain(), reasons, lh), null, forecast, changes);
  }

  private static NextTest next(
      Clock clock, Draw draw, double gain, List<String> because, boolean lh) {
    return new NextTest(
        draw.kind().name().toLowerCase(Locale.ROOT),
        clock.offset(draw.at()),
        clock.offset(draw.result()),
        gain,
        because,
        lh ? List.of("lh") : List.of());
  }

  private static List<String> because(StageResult due, TestDue test) {
    return due.ruled(TestDue.class)
        .filter(ruled -> ruled.conclusion().kind() == test.kind())
        .filter(ruled -> ruled.conclusion().hoursAfter() == test.hoursAfter())
        .map(ruled -> ruled.rule().id())
        .distinct()
        .toList();
  }

  /** What rules say of the end of testing. */
  private static @Nullable String ended(StageResult due) {
    return due.all(TestingDone.class).stream()
        .min(Comparator.comparing(TestingDone::kind))
        .map(TestingDone::sentence)
        .orElse(null);
  }

  private static String stopped(Tools tools, StageResult due, @Nullable OnForecast forecast) {
    if (forecast != null) {
      return "No progesterone result can be there before the decision is due; none could change it";
    }
    @Nullable String ended = ended(due);
    return ended != null
        ? ended
        : "No test of the next "
            + Math.round(tools.value("planning.ahead-days"))
            + " days can still change the plan";
  }

  /**
   * Whether the draw the trade asks for is made though it may not change the plan: while more
   * matings could follow than are planned, and while ovulation is not proven and the result can
   * still call the plan off, as a booking can be but an order or a journey cannot, or should do so.
   */
  private static boolean mustBeMade(@Nullable Draw floor, Findings findings, Breeding breeding) {
    if (breeding.dosesToSpare()) {
      return true;
    }
    if (floor == null || findings.proven() || breeding.first().isEmpty()) {
      return false;
    }
    Slot first = breeding.first().get();
    boolean inTime = !floor.result().isAfter(first.lastCall());
    boolean onceMore = breeding.opposed(first.day()) && first.lastCall().equals(first.middle());
    return inTime || onceMore;
  }

  /** The series of the latest number, which the next value should belong to. */
  private static Series series(Findings findings) {
    return findings.levels().stream()
        .max(Comparator.comparing(Level::at).thenComparing(Level::observation))
        .map(Level::series)
        .orElse(Series.of(null, Method.UNKNOWN));
  }

  /** What to say where the plan's first deadline passes before any result; null where none does. */
  private static @Nullable OnForecast forecast(
      Tools tools, CycleRecord cycle, Clock clock, Breeding breeding, TestChoice.Valued soonest) {
    Slot first = breeding.first().orElseThrow();
    boolean now = Hours.between(cycle.asOf(), first.from()) <= tools.value("planning.breed-within");
    if (now || first.deadlines().isEmpty() || !first.decideBy().isBefore(soonest.draw().result())) {
      return null;
    }
    Instant by = first.decideBy();
    TestValue.Outcome outcome = soonest.outcome();
    boolean act = outcome.actRather();
    String text =
        "The result of a test on "
            + clock.dayAndTime(soonest.draw().at())
            + " would be there on "
            + clock.dayAndTime(soonest.draw().result())
            + ", after this is due. Acting on the forecast meets "
            + eggs(outcome.acting())
            + " in 100 of her eggs, waiting for the result "
            + eggs(outcome.waiting())
            + ". If acting proves too early it loses "
            + eggs(outcome.actingLoses())
            + " on average, if waiting proves too late it loses "
            + eggs(outcome.waitingLoses())
            + ": "
            + (act ? "acting" : "waiting")
            + " is the cheaper mistake.";
    return new OnForecast(
        clock.offset(by),
        clock.offset(soonest.draw().result()),
        outcome.acting(),
        outcome.waiting(),
        outcome.actingLoses(),
        outcome.waitingLoses(),
        act ? "act" : "wait",
        text);
  }

  private static String eggs(double share) {
    double inHundred = 100 * share;
    return inHundred < 1 ? "less than 1" : Long.toString(Math.round(inHundred));
  }
}
