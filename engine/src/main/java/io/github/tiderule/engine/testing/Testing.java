package io.github.tiderule.engine.testing;

import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.advice.Mistake;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.days.TestValue;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.plan.Planned;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Part;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.SeasonAhead;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.engine.season.Standing;
import io.github.tiderule.engine.testing.DrawTimes.Draw;
import io.github.tiderule.engine.timeline.Foresight;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.SameBlood;
import io.github.tiderule.rules.conclusion.TestDue;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.TestingDone;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** When to test next, what that is worth, and what its result would change. */
public final class Testing {

  private final Planned planned;
  private final Read read;
  private final Season season;
  private final StageRun due;
  private final Set<TestKind> done;
  private final DrawTimes times;
  private final @Nullable Draw floor;
  private final List<String> because;

  private Testing(Planned planned, StageRun due) {
    this.planned = planned;
    this.due = due;
    read = planned.standing().read();
    season = read.season();
    times = new DrawTimes(read);
    done = done(due);
    Optional<Ruled<TestDue>> first =
        due.ruled(TestDue.class)
            .filter(ruled -> !done.contains(ruled.conclusion().kind()))
            .min(
                Comparator.comparing((Ruled<TestDue> ruled) -> !decides(ruled.conclusion()))
                    .thenComparing(ruled -> ruled.conclusion().kind())
                    .thenComparing(ruled -> times.due(ruled.conclusion()))
                    .thenComparing(ruled -> ruled.rule().id()));
    floor = first.map(ruled -> times.of(ruled.conclusion())).orElse(null);
    because = first.map(ruled -> because(due, ruled.conclusion())).orElse(List.of());
  }

  /**
   * The next test of a season; none is talked about where all talk is stopped, where a vet says
   * first whether she is to be bred, or between two seasons.
   */
  public static Tested next(Planned planned) {
    if (isUntold(planned.standing()) || SeasonAhead.between(planned.season())) {
      return Tested.untold(planned);
    }
    Part next = Part.begun("next test");
    Tested tested = new Testing(planned, due(planned.standing())).tested();
    next.commit();
    return tested;
  }

  /** Whether it is no season to test in, or a vet says first whether it is one. */
  private static boolean isUntold(Standing standing) {
    return standing instanceof Standing.Stopped
        || standing instanceof Standing.BrokenOff
        || (standing instanceof Standing.ForVet && !standing.read().vetOnly());
  }

  private static StageRun due(Standing standing) {
    Read read = standing.read();
    Season season = read.season();
    @Nullable Dated dated = standing.dated();
    return season.run(
        Stage.NEXT,
        read.levels(),
        read.accepted(),
        read.acceptedProgesterone(),
        read.findings(),
        read.held(),
        season.earlierCycles(),
        dated == null ? List.of() : List.of(dated.forecast()),
        List.of(season.semenPlan(), season.laboratory()));
  }

  /** The kinds of tests that rules have ended. */
  private static Set<TestKind> done(StageRun due) {
    return due.all(TestingDone.class).stream()
        .map(TestingDone::kind)
        .collect(Collectors.toUnmodifiableSet());
  }

  private boolean decides(TestDue test) {
    return Tested.first(due).map(first -> first.conclusion().test() == test.kind()).orElse(false);
  }

  private Tested tested() {
    @Nullable Breeding breeding = planned.breeding();
    Optional<ScoredPlan> plan = breeding == null ? Optional.empty() : breeding.best();
    return breeding == null || plan.isEmpty() ? asDue() : weighed(breeding, plan.get());
  }

  /** The test that the trade asks for, where there is no plan for it to change. */
  private Tested asDue() {
    return floor == null
        ? new Tested(planned, due, null, ended(due), null, List.of(), null)
        : new Tested(planned, due, next(floor, 0, because, false), null, null, List.of(), null);
  }

  /** The test worth most for a plan. */
  private Tested weighed(Breeding breeding, ScoredPlan plan) {
    Dated dated = breeding.dated();
    Foresight foresight = season.tools().timeline().foresight(dated.evidence(), dated.estimate());
    boolean lhOnSameBlood =
        due.all(SameBlood.class).stream()
            .anyMatch(one -> one.drawn() == TestKind.PROGESTERONE && one.also() == TestKind.LH);
    TestChoice choice =
        new TestChoice(season, foresight, series(read), breeding, plan, lhOnSameBlood);
    @Nullable Draw decides = Tested.first(due).isPresent() ? floor : null;
    TestChoice.Chosen chosen =
        decides != null
            ? choice.asked(decides)
            : choice.choose(times, floor, done, mustBeMade(breeding));
    // where rules have ended progesterone testing there is no result to wait for, and where a test
    // stands before every act nothing is decided without it
    @Nullable OnForecast forecast =
        decides != null || done.contains(TestKind.PROGESTERONE)
            ? null
            : choice.soonest(times, floor).map(soonest -> forecast(breeding, soonest)).orElse(null);
    List<Sentence> sentences = choice.sentences();
    Thresholds thresholds = new Thresholds(dated, foresight, breeding, plan);
    TestChoice.@Nullable Valued test = chosen.test();
    List<Change> changes = new ArrayList<>();
    if (test != null && test.draw().kind() == TestKind.PROGESTERONE) {
      changes.addAll(thresholds.ofNext(test, choice.coming(test.draw())));
    }
    changes.addAll(thresholds.ofLatest());
    return test == null
        ? new Tested(planned, due, null, stopped(forecast), forecast, changes, sentences)
        : new Tested(
            planned,
            due,
            next(test, chosen.asTheTradeHasIt(), lhOnSameBlood),
            null,
            forecast,
            changes,
            sentences);
  }

  private NextTest next(TestChoice.Valued test, boolean asTheTradeHasIt, boolean lhOnSameBlood) {
    // the trade's own wish for LH is met by the blood that is drawn anyway
    boolean lh =
        test.withLh()
            || (lhOnSameBlood
                && test.draw().kind() == TestKind.PROGESTERONE
                && due.all(TestDue.class).stream().anyMatch(one -> one.kind() == TestKind.LH));
    List<String> reasons =
        new ArrayList<>(asTheTradeHasIt ? because : List.of(EngineStep.TEST_VALUE.id()));
    if (lh) {
      due.ruled(SameBlood.class).map(ruled -> ruled.rule().id()).forEach(reasons::add);
    }
    return next(test.draw(), test.gain(), reasons, lh);
  }

  private NextTest next(Draw draw, double gain, List<String> reasons, boolean lh) {
    Clock clock = season.clock();
    return new NextTest(
        draw.kind(),
        clock.offset(draw.at()),
        clock.offset(draw.result()),
        gain,
        reasons,
        lh ? List.of(TestKind.LH) : List.of());
  }

  private static List<String> because(StageRun due, TestDue test) {
    return due.ruled(TestDue.class)
        .filter(ruled -> ruled.conclusion().kind() == test.kind())
        .filter(ruled -> ruled.conclusion().hoursAfter() == test.hoursAfter())
        .map(ruled -> ruled.rule().id())
        .distinct()
        .toList();
  }

  /** What rules say of the end of testing. */
  private static @Nullable Sentence ended(StageRun due) {
    return due.all(TestingDone.class).stream()
        .min(Comparator.comparing(TestingDone::kind))
        .map(TestingDone::words)
        .orElse(null);
  }

  private Sentence stopped(@Nullable OnForecast forecast) {
    if (forecast != null) {
      return Sentence.of(
          "No progesterone result can be there before the decision is due; none could change it");
    }
    @Nullable Sentence ended = ended(due);
    return ended != null
        ? ended
        : season
            .tools()
            .say()
            .that("No test of the next {planning.ahead-days:whole} days can still change the plan");
  }

  /**
   * Whether the draw the trade asks for is made though it may not change the plan: while more
   * matings could follow than are planned, and while ovulation is not proven and the result can
   * still call the plan off, as a booking can be but an order or a journey cannot, or should do so.
   */
  private boolean mustBeMade(Breeding breeding) {
    if (breeding.dosesToSpare()) {
      return true;
    }
    if (floor == null || read.proven() || breeding.first().isEmpty()) {
      return false;
    }
    Slot first = breeding.first().get();
    boolean inTime = !floor.result().isAfter(first.lastCall());
    boolean onceMore = breeding.opposed(first.day()) && first.lastCall().equals(first.middle());
    return inTime || onceMore;
  }

  /** The series of the latest number, which the next value should belong to. */
  private static Series series(Read read) {
    return read.levels().stream()
        .max(Comparator.comparing(Level::at).thenComparing(Level::observation))
        .map(Level::series)
        .orElse(Series.of(null, Method.UNKNOWN));
  }

  /** What to say where the plan's first deadline passes before any result; null where none does. */
  private @Nullable OnForecast forecast(Breeding breeding, TestChoice.Valued soonest) {
    Clock clock = season.clock();
    Slot first = breeding.first().orElseThrow();
    boolean now =
        Hours.between(season.asOf(), first.from()) <= season.tools().value("planning.breed-within");
    if (now || first.deadlines().isEmpty() || !first.decideBy().isBefore(soonest.draw().result())) {
      return null;
    }
    Instant by = first.decideBy();
    TestValue.Outcome outcome = soonest.outcome();
    boolean act = TestChoice.acts(season, outcome);
    boolean tooLittle = !act && outcome.actRather();
    Sentence text =
        Sentence.of(
            "The result of a test on {} would be there on {}, after this is due. Acting on the"
                + " forecast meets {} in 100 of her eggs, waiting for the result {}. If acting"
                + " proves too early it loses {} on average, if waiting proves too late it loses"
                + " {}: "
                + (act
                    ? "acting is the cheaper mistake."
                    : tooLittle
                        ? "acting gains too little for the only dose, so wait."
                        : "waiting is the cheaper mistake."),
            clock.dayAndTime(soonest.draw().at()),
            clock.dayAndTime(soonest.draw().result()),
            eggs(outcome.acting()),
            eggs(outcome.waiting()),
            eggs(outcome.actingLoses()),
            eggs(outcome.waitingLoses()));
    return new OnForecast(
        clock.offset(by),
        clock.offset(soonest.draw().result()),
        outcome.acting(),
        outcome.waiting(),
        outcome.actingLoses(),
        outcome.waitingLoses(),
        act ? Mistake.ACT : Mistake.WAIT,
        text);
  }

  private static Sentence eggs(double share) {
    double inHundred = 100 * share;
    return inHundred < 1 ? Sentence.of("less than 1") : Sentence.of("{}", Math.round(inHundred));
  }
}
