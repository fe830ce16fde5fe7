package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.engine.advice.reasoning.Stamp;
import io.github.tiderule.engine.timeline.Estimate;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.Account;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.Awaited;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.care.CautionLevel;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.CaesareanDay;
import io.github.tiderule.rules.fact.Forecast;
import io.github.tiderule.rules.fact.Moment;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** One cycle on its way through the stages. */
final class Evaluation {

  private final Tools tools;
  private final RuleBase rules;
  private final SheetMaking sheet;
  private final CycleRecord cycle;
  private final Moment moment;
  private final Clock clock;
  private final TraceBook trace = new TraceBook();
  private final Map<Stage, Account> accounts = new EnumMap<>(Stage.class);
  private @Nullable Breeding breeding;

  Evaluation(Tools tools, CycleRecord cycle) {
    this.tools = tools;
    this.rules = tools.rules();
    this.sheet = SheetMaking.of(tools, cycle);
    this.cycle = sheet.cycle();
    this.moment = new Moment(cycle.asOf(), cycle.zone());
    this.clock = new Clock(cycle.zone());
  }

  Advice advice() {
    return reasoning().advice();
  }

  Reasoning reasoning() {
    Part whole = Part.begun("whole");
    Reasoning reasoning = reasoned();
    whole.commit();
    return reasoning;
  }

  private Reasoning reasoned() {
    StageResult reading = run(Stage.READING, cycle.observations(), cycle.treatments());
    StageResult found =
        run(
            Stage.FINDINGS,
            Findings.accepted(cycle, reading),
            reading.all(Level.class),
            reading.all(Question.class),
            cycle.earlierCycles(),
            cycle.treatments(),
            List.of(cycle.semenPlan(), cycle.outcome()));
    Findings findings = Findings.of(cycle, reading, found);
    TimeAxis axis = Gathering.axis(cycle);
    Evidence evidence =
        Gathering.of(
            cycle,
            axis,
            findings.levels(),
            findings.accepted(),
            findings.discounted(),
            findings.setAside());
    Part posterior = Part.begun("posterior");
    @Nullable Estimate estimate =
        evidence.saysSomething() ? tools.timeline().estimate(evidence) : null;
    posterior.commit();
    @Nullable Dating dating =
        estimate == null ? null : new Dating(clock, axis, cycle.asOf(), estimate);
    @Nullable PregnancyCourse course =
        dating == null
            ? null
            : PregnancyCourse.of(tools, cycle, findings, clock, axis, evidence, dating);
    List<CaesareanDay> caesareanDays = course == null ? List.of() : course.caesareanDays();
    List<Forecast> forecast = dating == null ? List.of() : List.of(dating.forecast());
    StageResult care = care(findings, forecast, caesareanDays, sheet.facts());
    boolean stopped =
        care.all(Caution.class).stream().anyMatch(c -> c.level() == CautionLevel.STOP);

    trace.add(Stage.READING, reading);
    trace.add(Stage.FINDINGS, found);
    if (dating != null) {
      trace.add(
          "timeline",
          EngineStep.TIMELINE,
          evidence.items().stream().map(Evidence.Item::id).sorted().toList(),
          List.of(dating.sentence()));
    }
    boolean silent = stopped || findings.vetOnly();
    Part plan = Part.begun("plan");
    breeding =
        dating == null || silent
            ? null
            : Breeding.of(tools, cycle, findings, clock, axis, dating, this::run, trace);
    plan.commit();
    Part next = Part.begun("next test");
    @Nullable Testing testing =
        stopped || SeasonAhead.between(cycle)
            ? null
            : Testing.of(
                tools, cycle, findings, clock, axis, evidence, dating, breeding, this::run, trace);
    next.commit();
    boolean sheetWanted = !silent && sheet.wanted(breeding);
    if (sheetWanted && sheet.facts().isEmpty()) {
      care = care(findings, forecast, caesareanDays, sheet.bareFacts());
    }
    trace.add(Stage.CARE, care);
    @Nullable Bred bred =
        dating == null || silent
            ? null
            : SoFar.of(tools, cycle, findings, clock, axis, dating, breeding);
    ActionChoice action =
        new ActionChoice(
            tools, cycle, clock, findings, reading, care, dating, course, breeding, testing, bred);
    Part nearMisses = Part.begun("near misses");
    NearMisses near = NearMisses.of(rules, awaited(reading, found, care), accounts.values());
    nearMisses.commit();
    Advice advice =
        new Advice(
            Stamp.of(Tiderule.VERSION, rules),
            clock.offset(cycle.asOf()),
            clock.offset(action.validUntil()),
            cycle.female().id(),
            action.action(),
            dating == null ? null : dating.lhPeak(),
            dating == null ? null : dating.ovulation(findings.proven()),
            breeding == null ? List.of() : breeding.days(),
            breeding == null ? null : breeding.plan(testing == null ? null : testing.forecast()),
            testing == null ? null : testing.nextTest(),
            testing == null ? null : testing.noTestBecause(),
            bred,
            course == null || findings.vetOnly() || (stopped && !course.pastBreeding())
                ? null
                : course.whelping(),
            course == null ? null : course.pregnancy(care, !findings.vetOnly()),
            course == null || silent ? null : course.caesarean(care, caesareanDays),
            course == null || findings.vetOnly() ? null : course.lookBack(),
            questions(reading),
            warnings(care),
            dating == null ? List.of() : dating.influence(),
            testing == null ? List.of() : testing.changes(),
            trace.lines(),
            near.told(),
            silent ? List.of() : Disagreements.of(care),
            ObservationNotes.of(reading, found),
            sheetWanted ? sheet.sheet(care, breeding, clock) : null,
            stopped ? null : SeasonAhead.of(tools, cycle, clock, care, action.seasonOver()));
    @Nullable Posterior believed =
        estimate == null ? null : new Posterior(tools.timeline(), evidence, estimate, axis);
    return new Reasoning(advice, rules.cards(), accounts, trace.firings(), near.untold(), believed);
  }

  /** The days of the cycle, once its advice is made; null where none is left to breed on. */
  @Nullable Breeding breeding() {
    return breeding;
  }

  /**
   * The cautions.
   *
   * @param forSheet what the day of insemination adds; empty where there is none
   */
  private StageResult care(
      Findings findings,
      List<Forecast> forecast,
      List<CaesareanDay> caesareanDays,
      List<Object> forSheet) {
    return run(
        Stage.CARE,
        findings.accepted(),
        findings.levels(),
        findings.findings(),
        forecast,
        caesareanDays,
        cycle.earlierCycles(),
        cycle.treatments(),
        List.of(cycle.semenPlan(), cycle.outcome()),
        SeasonAhead.facts(cycle),
        forSheet);
  }

  /** Runs a stage over some facts, with what every stage sees. */
  private StageResult run(Stage stage, List<?>... facts) {
    List<Object> all = new ArrayList<>();
    all.add(moment);
    all.add(cycle.firstBlood());
    all.add(cycle.female());
    for (List<?> some : facts) {
      all.addAll(some);
    }
    Part part = Part.begun(stage.word());
    StageResult result = rules.run(stage, all);
    part.commit();
    accounts.put(stage, rules.account(stage, all, result));
    return result;
  }

  private static List<Query> questions(StageResult reading) {
    return reading.all(Question.class).stream()
        .map(
            question ->
                new Query(
                    question.about(),
                    question.sentence(),
                    question.readings().stream()
                        .map(r -> new Query.Reading(r.unit().word(), r.meaning().toString()))
                        .toList()))
        .toList();
  }

  private static List<Warning> warnings(StageResult care) {
    return warnings(Stream.concat(care.ruled(Caution.class), SheetMaking.graveFindings(care)));
  }

  /** Cautions as they are told, the gravest first and none twice. */
  static List<Warning> warnings(Stream<StageResult.Ruled<Caution>> cautions) {
    return cautions
        .sorted(
            Comparator.comparing((StageResult.Ruled<Caution> ruled) -> ruled.conclusion().level())
                .thenComparing(ruled -> ruled.rule().id()))
        .map(
            ruled ->
                new Warning(
                    ruled.conclusion().level().name().toLowerCase(Locale.ROOT),
                    ruled.conclusion().sentence(),
                    ruled.rule().id(),
                    ruled.rule().sources()))
        .distinct()
        .toList();
  }

  private static List<Awaited> awaited(StageResult... results) {
    return Arrays.stream(results)
        .flatMap(result -> result.all(Awaited.class).stream())
        .distinct()
        .toList();
  }
}
