package io.github.tiderule.engine;

import io.github.tiderule.engine.action.ActionChoice;
import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.AdviceBreeding;
import io.github.tiderule.engine.advice.AdviceCourse;
import io.github.tiderule.engine.advice.AdviceReasoning;
import io.github.tiderule.engine.advice.AdviceTesting;
import io.github.tiderule.engine.advice.AdviceTiming;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.engine.advice.reasoning.Stamp;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.engine.explain.DayCounts;
import io.github.tiderule.engine.explain.Disagreements;
import io.github.tiderule.engine.explain.NearMisses;
import io.github.tiderule.engine.explain.ObservationNotes;
import io.github.tiderule.engine.explain.TraceBook;
import io.github.tiderule.engine.explain.Warnings;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.plan.Planned;
import io.github.tiderule.engine.pregnancy.CourseTold;
import io.github.tiderule.engine.pregnancy.PregnancyCourse;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Part;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.SeasonAhead;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.engine.season.Standing;
import io.github.tiderule.engine.sheet.SheetMaking;
import io.github.tiderule.engine.testing.Tested;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.rules.Account;
import io.github.tiderule.rules.Chapter;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.reading.Question;
import java.time.Instant;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Puts what every stage found into one answer. */
final class Answer {

  private final Tested tested;
  private final Planned planned;
  private final Standing standing;
  private final Read read;
  private final Season season;
  private final @Nullable Dated dated;
  private final @Nullable PregnancyCourse course;
  private final Care care;
  private final @Nullable InseminationSheet sheet;

  /**
   * @param course null where nothing dates the season
   * @param sheet null where none is wanted
   */
  Answer(
      Tested tested,
      @Nullable PregnancyCourse course,
      Care care,
      @Nullable InseminationSheet sheet) {
    this.tested = tested;
    this.course = course;
    this.care = care;
    this.sheet = sheet;
    planned = tested.planned();
    standing = planned.standing();
    read = standing.read();
    season = read.season();
    dated = standing.dated();
  }

  /**
   * The answer with the means to ask why.
   *
   * @param then the advice as it was at an earlier moment
   * @param readings tries a result that is asked about in each way; null where none is tried
   */
  Reasoning reasoning(Function<Instant, Advice> then, @Nullable Rereading readings) {
    RuleBase rules = season.tools().rules();
    List<StageRun> runs = runs();
    Part nearMisses = Part.begun("near misses");
    NearMisses near = NearMisses.of(rules, runs);
    nearMisses.commit();
    TraceBook trace = trace();
    Map<Stage, Account> accounts = new EnumMap<>(Stage.class);
    runs.forEach(run -> accounts.put(run.stage(), run.account()));
    return new Reasoning(
        advice(then, readings, trace, near),
        rules.cards(),
        accounts,
        trace.firings(),
        near.untold(),
        dated == null ? null : Posterior.of(dated));
  }

  /** The stages of rules that were run, each once. */
  private List<StageRun> runs() {
    return Stream.of(
            List.of(read.reading(), read.found()), planned.runs(), tested.runs(), care.runs())
        .flatMap(List::stream)
        .toList();
  }

  private TraceBook trace() {
    TraceBook trace = new TraceBook();
    trace.add(read.reading());
    trace.add(read.found());
    if (dated != null) {
      trace.add(
          TraceStage.TIMELINE,
          EngineStep.TIMELINE,
          dated.evidence().items().stream().map(Evidence.Item::id).sorted().toList(),
          List.of(dated.words()));
    }
    planned.write(trace);
    tested.write(trace);
    trace.add(Chapter.CARE, care.result());
    return trace;
  }

  private Advice advice(
      Function<Instant, Advice> then,
      @Nullable Rereading readings,
      TraceBook trace,
      NearMisses near) {
    Clock clock = season.clock();
    ActionChoice action = new ActionChoice(tested, course, care);
    boolean unusable = action.doseUnusable();
    boolean unplanned = unusable || action.valuesWait() || action.asked().isPresent();
    List<BreedingDay> breedingDays = days(action);
    CourseTold told = CourseTold.of(course, standing, care, then);
    return Advice.of(
            Stamp.of(Tiderule.VERSION, season.tools().rules()),
            clock.offset(season.asOf()),
            clock.offset(action.validUntil()),
            season.female().id(),
            told(action, readings))
        .withQuestions(questions())
        .withCautions(warnings())
        .with(timing())
        .with(new AdviceBreeding(breedingDays, unplanned ? null : plan(), planned.bred(), sheet))
        .with(
            new AdviceTesting(
                tested.nextTest(),
                tested.noTestBecause(),
                unplanned ? List.of() : tested.changes()))
        .with(
            new AdviceCourse(
                standing instanceof Standing.Stopped || standing instanceof Standing.BrokenOff
                    ? null
                    : SeasonAhead.of(season, care, action.seasonOver()),
                nothingToWhelp(breedingDays) ? null : told.whelping(),
                told.pregnancy(),
                told.caesarean(),
                told.lookBack()))
        .with(
            new AdviceReasoning(
                trace.lines(),
                near.told(),
                dated == null ? List.of() : dated.influence(),
                standing.silent() ? List.of() : Disagreements.of(care),
                ObservationNotes.of(read),
                standing.silent()
                    ? List.of()
                    : DayCounts.of(care, unplanned ? null : firstPlanned())));
  }

  private AdviceTiming timing() {
    // a season that broke off has no ovulation to date
    @Nullable Dated days = standing instanceof Standing.BrokenOff ? null : dated;
    return new AdviceTiming(
        days == null ? null : days.lhPeak(),
        days == null ? null : days.ovulation(),
        seasonCourse());
  }

  private @Nullable Plan plan() {
    @Nullable Breeding breeding = planned.breeding();
    return breeding == null || tested.tooLateForPlan().isPresent()
        ? null
        : breeding.plan(
            tested.forecast(), tested.first().map(ruled -> ruled.conclusion().test()).orElse(null));
  }

  /** The days ahead; none is recommended while none is planned. */
  private List<BreedingDay> days(ActionChoice action) {
    @Nullable Breeding breeding = planned.breeding();
    if (breeding == null || action.asked().isPresent()) {
      return List.of();
    }
    return action.doseUnusable()
        ? breeding.daysOfAnother()
        : action.valuesWait() ? breeding.daysUnplanned() : breeding.days();
  }

  private @Nullable LocalDate firstPlanned() {
    @Nullable Breeding breeding = planned.breeding();
    return breeding == null
        ? null
        : breeding
            .first()
            .map(slot -> slot.middle().atZone(season.zone()).toLocalDate())
            .orElse(null);
  }

  private @Nullable SeasonCourse seasonCourse() {
    return read.course()
        .map(
            ruled ->
                new SeasonCourse(
                    ruled.conclusion().kind(),
                    ruled.conclusion().words(),
                    ruled.conclusion().observations(),
                    season.clock().offset(ruled.conclusion().since()),
                    ruled.rule().id(),
                    read.withdrawn()))
        .orElse(null);
  }

  /** The action, with what each answer to a question would lead to. */
  private Action told(ActionChoice choice, @Nullable Rereading readings) {
    Action action = choice.action();
    Optional<Question> asked = choice.asked();
    return readings == null || asked.isEmpty() || action.now() != Action.Now.ANSWER
        ? action
        : readings.told(action, asked.get(), season.clock());
  }

  /**
   * Whether nothing was bred, nobody says that she is pregnant, and no day told is left to breed
   * on.
   */
  private boolean nothingToWhelp(List<BreedingDay> breedingDays) {
    return planned.bred() == null
        && !Boolean.TRUE.equals(season.outcome().pregnant())
        && breedingDays.stream().allMatch(day -> day.verdict() == Verdict.AVOID)
        && !(standing instanceof Standing.Stopped)
        && !read.has(
            FindingKind.ALREADY_BRED,
            FindingKind.LIVE_PUPS,
            FindingKind.NO_HEARTBEAT,
            FindingKind.SINGLE_PUP);
  }

  private List<Query> questions() {
    return read.questions().stream()
        .map(
            question ->
                new Query(
                    question.about(),
                    question.words(),
                    question.readings().stream()
                        .map(r -> new Query.Reading(r.unit(), r.value(), r.meaning()))
                        .toList()))
        .toList();
  }

  private List<Warning> warnings() {
    return Warnings.of(Stream.concat(care.ruled(Caution.class), SheetMaking.graveFindings(care)));
  }
}
