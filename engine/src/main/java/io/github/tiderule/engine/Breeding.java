package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.engine.days.DayTable;
import io.github.tiderule.engine.days.Planner;
import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.days.Slots;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.DayReason;
import io.github.tiderule.rules.conclusion.Effect;
import io.github.tiderule.rules.conclusion.RouteInstead;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.SemenPlan;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The days ahead with their shares and reasons, and the plan made of them. */
final class Breeding {

  private final Tools tools;
  private final Clock clock;
  private final Dating dating;
  private final DayTable table;
  private final StageResult reasons;
  private final Set<LocalDate> forbidden;
  private final Planner.@Nullable Choice choice;

  private Breeding(
      Tools tools,
      CycleRecord cycle,
      Clock clock,
      Dating dating,
      DayTable table,
      StageResult reasons) {
    this.tools = tools;
    this.clock = clock;
    this.dating = dating;
    this.table = table;
    this.reasons = reasons;
    forbidden = new HashSet<>();
    for (DayReason reason : reasons.all(DayReason.class)) {
      if (reason.effect() == Effect.VETOES) {
        forbidden.add(reason.day());
      }
    }
    choice =
        tools
            .planner()
            .choose(table, cycle.semenPlan(), forbidden)
            .filter(found -> found.best().mean() - table.alreadyMet() > leastShare())
            .orElse(null);
  }

  private double leastShare() {
    return tools.value("planning.passed-share");
  }

  /** The days and the plan of a cycle; null where no day is left to breed on. */
  static @Nullable Breeding of(
      Tools tools,
      CycleRecord cycle,
      Findings findings,
      Clock clock,
      TimeAxis axis,
      Dating dating,
      StageRunner runner,
      TraceBook trace) {
    SemenPlan semenPlan = cycle.semenPlan();
    double usualAge = tools.value("planning.chilled-age-hours");
    List<Slot> slots = slots(tools, cycle, clock, dating, usualAge);
    if (slots.isEmpty()) {
      return null;
    }
    DayTable table =
        DayTable.of(
            tools.eggs(), dating.density(), axis, slots, semenPlan, findings.breedings(), usualAge);
    StageResult reasons =
        runner.run(
            Stage.DAYS,
            table.days(),
            findings.accepted(),
            findings.findings(),
            findings.levels(),
            List.of(semenPlan, dating.forecast()));
    Breeding breeding = new Breeding(tools, cycle, clock, dating, table, reasons);
    trace.add(
        "days",
        EngineStep.EGG_SHARE,
        List.of(),
        table.days().stream()
            .map(day -> day.day() + " egg share " + Math.round(100 * day.share()) + " in 100")
            .toList());
    trace.add(Stage.DAYS, reasons);
    if (breeding.choice != null) {
      trace.add("days", EngineStep.PLAN, List.of(), List.of(breeding.sentence()));
    }
    return breeding;
  }

  private static List<Slot> slots(
      Tools tools, CycleRecord cycle, Clock clock, Dating dating, double usualAge) {
    long before = Math.round(tools.value("planning.days-before"));
    long after = Math.round(tools.value("planning.days-after"));
    LocalDate first = dating.quantile(0.05).atZone(clock.zone()).toLocalDate().minusDays(before);
    LocalDate last = dating.quantile(0.95).atZone(clock.zone()).toLocalDate().plusDays(after);
    return new Slots(cycle.semenPlan(), cycle.asOf(), cycle.zone(), usualAge)
        .until(last).stream().filter(slot -> !slot.day().isBefore(first)).toList();
  }

  private String sentence() {
    Planner.Choice found = java.util.Objects.requireNonNull(choice);
    List<String> times =
        found.best().slots().stream()
            .map(slot -> clock.dayAndTime(table.slots().get(slot).middle()))
            .toList();
    return "best set: "
        + String.join(", ", times)
        + ", egg share "
        + Math.round(100 * found.best().mean())
        + " in 100";
  }

  DayTable table() {
    return table;
  }

  Set<LocalDate> forbidden() {
    return Set.copyOf(forbidden);
  }

  Optional<ScoredPlan> best() {
    return Optional.ofNullable(choice).map(Planner.Choice::best);
  }

  /** Whether ovulation is known closely enough to recommend a day. */
  boolean close() {
    return dating.width() <= tools.value("planning.recommend-width");
  }

  /** The first slot of the plan, if there is one. */
  Optional<Slot> first() {
    return best().map(plan -> table.slots().get(plan.slots().get(0)));
  }

  /** The days, best first. */
  List<BreedingDay> days() {
    Set<LocalDate> planned =
        new HashSet<>(best().map(plan -> Planner.days(table, plan)).orElse(List.of()));
    List<Judged> judged = new ArrayList<>();
    for (CandidateDay day : table.days()) {
      List<Reason> why = reasonsFor(day.day());
      judged.add(new Judged(day, verdict(day, why, planned.contains(day.day())), why));
    }
    judged.sort(
        Comparator.comparing(Judged::verdict)
            .thenComparingDouble(one -> -one.day().share())
            .thenComparing(one -> one.day().day()));
    List<BreedingDay> days = new ArrayList<>();
    for (Judged one : judged) {
      CandidateDay day = one.day();
      Slot slot = plannedSlot(day.day()).orElse(table.slotOf(day.day()));
      days.add(
          new BreedingDay(
              days.size() + 1,
              day.day(),
              clock.offset(slot.from()),
              clock.offset(slot.to()),
              one.verdict(),
              new EggShare(day.share(), day.shareP10()),
              one.reasons()));
    }
    return days;
  }

  private record Judged(CandidateDay day, Verdict verdict, List<Reason> reasons) {}

  private Optional<Slot> plannedSlot(LocalDate day) {
    return best()
        .flatMap(
            plan ->
                plan.slots().stream()
                    .map(slot -> table.slots().get(slot))
                    .filter(slot -> slot.day().equals(day))
                    .findFirst());
  }

  private Verdict verdict(CandidateDay day, List<Reason> why, boolean planned) {
    if (forbidden.contains(day.day()) || day.share() < tools.value("planning.possible-share")) {
      return Verdict.AVOID;
    }
    boolean opposed = why.stream().anyMatch(reason -> reason.effect().equals("opposes"));
    return planned && !opposed && close() ? Verdict.RECOMMENDED : Verdict.POSSIBLE;
  }

  private List<Reason> reasonsFor(LocalDate day) {
    return reasons
        .ruled(DayReason.class)
        .filter(ruled -> ruled.conclusion().day().equals(day))
        .sorted(
            Comparator.comparing(
                    (StageResult.Ruled<DayReason> ruled) -> ruled.conclusion().effect())
                .reversed()
                .thenComparing(ruled -> ruled.rule().id()))
        .map(
            ruled ->
                new Reason(
                    ruled.rule().id(),
                    ruled.conclusion().effect().name().toLowerCase(Locale.ROOT),
                    ruled.conclusion().sentence(),
                    ruled.rule().sources(),
                    ruled.conclusion().observations()))
        .distinct()
        .toList();
  }

  /** The plan; null where no set of doses is worth giving. */
  @Nullable Plan plan() {
    if (choice == null) {
      return null;
    }
    ScoredPlan best = choice.best();
    @Nullable Instant orderBy = table.slots().get(best.slots().get(0)).orderBy();
    return new Plan(
        times(best),
        new EggShare(best.mean(), best.p10()),
        orderBy == null ? null : clock.offset(orderBy),
        becauseOf(best),
        choice.others().stream()
            .map(
                other ->
                    new Plan.Alternative(
                        times(other.plan()),
                        new EggShare(other.plan().mean(), other.plan().p10()),
                        other.note()))
            .toList());
  }

  private List<String> becauseOf(ScoredPlan plan) {
    Set<LocalDate> days = new HashSet<>(Planner.days(table, plan));
    Set<String> rules = new LinkedHashSet<>();
    reasons
        .ruled(DayReason.class)
        .filter(ruled -> days.contains(ruled.conclusion().day()))
        .filter(ruled -> ruled.conclusion().effect() == Effect.SUPPORTS)
        .forEach(ruled -> rules.add(ruled.rule().id()));
    reasons.ruled(RouteInstead.class).forEach(ruled -> rules.add(ruled.rule().id()));
    rules.add(EngineStep.PLAN.id());
    return List.copyOf(rules);
  }

  /** The times of a plan, on the quarter hour nearest the middle of each window. */
  List<OffsetDateTime> times(ScoredPlan plan) {
    return plan.slots().stream()
        .map(slot -> clock.offset(clock.quarter(table.slots().get(slot))))
        .toList();
  }
}
