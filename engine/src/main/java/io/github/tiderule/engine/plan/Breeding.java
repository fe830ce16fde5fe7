package io.github.tiderule.engine.plan;

import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Commitment;
import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.engine.days.DayTable;
import io.github.tiderule.engine.days.PlanSearch;
import io.github.tiderule.engine.days.Planner;
import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.days.Slots;
import io.github.tiderule.engine.explain.TraceBook;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.DayReason;
import io.github.tiderule.rules.conclusion.Effect;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.RouteInstead;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The days ahead with their shares and reasons, and the plan made of them. */
public final class Breeding {

  private final Dated dated;
  private final Tools tools;
  private final Clock clock;
  private final DayTable table;
  private final StageRun reasons;
  private final Set<LocalDate> forbidden;
  private final Set<LocalDate> farBelow;
  private final SemenPlan semenPlan;
  private final PlanSearch search;
  private final int doses;
  private final Planner.@Nullable Choice choice;

  private Breeding(Dated dated, DayTable table, StageRun reasons) {
    this.dated = dated;
    this.table = table;
    this.reasons = reasons;
    tools = dated.season().tools();
    clock = dated.season().clock();
    semenPlan = dated.season().semenPlan();
    doses = tools.planner().dosesLeft(semenPlan, dated.read().breedings());
    forbidden = days(reason -> reason.effect() == Effect.VETOES);
    farBelow = days(reason -> reason.about() == About.FAR_BELOW_BEST);
    search = tools.planner().search(table, semenPlan, forbidden);
    choice =
        byCalendarAlone()
            ? null
            : worthy()
                .filter(found -> found.best().mean() - table.alreadyMet() > leastShare())
                .orElse(null);
  }

  private Set<LocalDate> days(Predicate<DayReason> which) {
    return reasons.all(DayReason.class).stream()
        .filter(which)
        .map(DayReason::day)
        .collect(Collectors.toUnmodifiableSet());
  }

  /** The plan without a day far below the best one, which is called one to avoid. */
  private Optional<Planner.Choice> worthy() {
    Optional<Planner.Choice> usual = chosen(forbidden, search);
    if (usual.isEmpty()
        || Planner.days(table, usual.get().best()).stream().noneMatch(farBelow::contains)) {
      return usual;
    }
    Set<LocalDate> closed = new HashSet<>(forbidden);
    closed.addAll(farBelow);
    return chosen(closed, tools.planner().search(table, semenPlan, closed));
  }

  private Optional<Planner.Choice> chosen(Set<LocalDate> closed, PlanSearch among) {
    return dated.read().has(FindingKind.BY_SIGNS) && semenPlan.doses() == null && doses > 0
        ? tools
            .planner()
            .everySecondDay(table, among, closed, tools.value("planning.possible-share"))
        : tools.planner().choose(table, among, semenPlan, doses);
  }

  /** Whether nothing but the calendar dates her: its days are a forecast, and no plan. */
  public boolean byCalendarAlone() {
    return dated.evidence().items().isEmpty();
  }

  /** The days that meet nearly as much as the best, in time order. */
  public List<LocalDate> usualDays() {
    double best =
        table.days().stream().mapToDouble(CandidateDay::share).max().orElse(0)
            * tools.value("planning.calendar-part");
    return table.days().stream()
        .filter(day -> day.share() >= best)
        .map(CandidateDay::day)
        .sorted()
        .toList();
  }

  /** Whether what is left is one frozen dose, which keeps for her next season. */
  private boolean lastFrozen() {
    return semenPlan.semen() == Semen.FROZEN && semenPlan.doses() != null && doses == 1;
  }

  /** Whether all there is to give is one chilled dose that is yet to be sent. */
  private boolean onlyChilled() {
    return semenPlan.semen() == Semen.CHILLED && semenPlan.onlyDose() && doses == 1;
  }

  /**
   * What the best day left would meet, where that is too little for the last frozen dose or the
   * only chilled one.
   */
  public Optional<Double> tooLittleForLast() {
    return (lastFrozen() || onlyChilled()) && choice == null
        ? table.days().stream()
            .filter(day -> !forbidden.contains(day.day()))
            .map(CandidateDay::share)
            .max(Comparator.naturalOrder())
            .filter(share -> share > tools.value("planning.possible-share"))
        : Optional.empty();
  }

  private double leastShare() {
    return tools.value(
        lastFrozen()
            ? "planning.last-dose-share"
            : onlyChilled()
                ? "planning.only-order-share"
                : table.alreadyMet() > 0 ? "planning.further-share" : "planning.possible-share");
  }

  /** The days and the plan of a season; null where no day is left to breed on. */
  static @Nullable Breeding of(Dated dated) {
    Season season = dated.season();
    List<Slot> slots = slots(dated);
    if (slots.isEmpty()) {
      return null;
    }
    DayTable table =
        DayTable.of(
            season.tools().eggs(),
            dated.density(),
            season.axis(),
            slots,
            season.semenPlan(),
            dated.read().breedings(),
            season.tools().value("planning.chilled-age-hours"));
    StageRun reasons =
        season.run(
            Stage.DAYS,
            table.days(),
            dated.read().accepted(),
            dated.read().findings(),
            dated.read().levels(),
            List.of(season.semenPlan(), dated.forecast()));
    return new Breeding(dated, table, reasons);
  }

  /** Writes down what the days and the plan rest on. */
  void write(TraceBook trace) {
    trace.add(
        TraceStage.DAYS,
        EngineStep.EGG_SHARE,
        List.of(),
        table.days().stream()
            .map(
                day ->
                    Sentence.of("{} egg share {} in 100", day.day(), Math.round(100 * day.share())))
            .toList());
    trace.add(reasons);
    if (choice == null) {
      return;
    }
    trace.add(TraceStage.DAYS, EngineStep.PLAN, List.of(), List.of(words(choice)));
    List<Sentence> deadlines =
        commitments(null).stream()
            .map(one -> Sentence.of("{} by {}", one.text(), clock.dayAndTime(one.by().toInstant())))
            .toList();
    if (!deadlines.isEmpty()) {
      trace.add(TraceStage.DAYS, EngineStep.DEADLINE, List.of(), deadlines);
    }
  }

  private static List<Slot> slots(Dated dated) {
    Season season = dated.season();
    Tools tools = season.tools();
    long before = Math.round(tools.value("planning.days-before"));
    long after = Math.round(tools.value("planning.days-after"));
    LocalDate first = dated.quantile(0.05).atZone(season.zone()).toLocalDate().minusDays(before);
    LocalDate last = dated.quantile(0.95).atZone(season.zone()).toLocalDate().plusDays(after);
    return new Slots(tools.rules().parameters(), season.semenPlan(), season.asOf(), season.zone())
        .until(last).stream().filter(slot -> !slot.day().isBefore(first)).toList();
  }

  public Dated dated() {
    return dated;
  }

  /** The rules about the days ahead, as they were run. */
  StageRun reasons() {
    return reasons;
  }

  private Sentence words(Planner.Choice found) {
    List<Part> times =
        found.best().slots().stream()
            .map(slot -> clock.dayAndTime(table.slots().get(slot).middle()))
            .toList();
    return Sentence.of(
        "best set: {}, egg share {} in 100",
        new Part.Several(times, Part.Joint.COMMAS),
        Math.round(100 * found.best().mean()));
  }

  public DayTable table() {
    return table;
  }

  public Set<LocalDate> forbidden() {
    return Set.copyOf(forbidden);
  }

  public PlanSearch search() {
    return search;
  }

  /** Whether any dose is left to give. */
  public boolean dosesLeft() {
    return doses > 0;
  }

  /** Whether more matings could follow than are planned. */
  public boolean dosesToSpare() {
    return semenPlan.doses() == null
        && best().map(plan -> plan.slots().size() < doses).orElse(false);
  }

  public Optional<ScoredPlan> best() {
    return Optional.ofNullable(choice).map(Planner.Choice::best);
  }

  /** Whether ovulation is known closely enough to recommend a day. */
  public boolean close() {
    return dated.width() <= tools.value("planning.recommend-width");
  }

  /** The first slot of the plan, if there is one. */
  public Optional<Slot> first() {
    return best().map(plan -> table.slots().get(plan.slots().get(0)));
  }

  private List<Slot> slots(List<Integer> places) {
    return places.stream().map(table.slots()::get).toList();
  }

  private List<Commitment> commitments(@Nullable TestKind first) {
    return best()
        .map(plan -> new Commitments(semenPlan, clock).of(slots(plan.slots()), first))
        .orElse(List.of());
  }

  /** The days, best first. */
  public List<BreedingDay> days() {
    return ranked().of(best().map(plan -> slots(plan.slots())).orElse(List.of()));
  }

  /** The same while nothing is planned: none is recommended. */
  public List<BreedingDay> daysUnplanned() {
    return ranked().of(List.of());
  }

  /** The same for another dose or male: none is recommended, and none is judged by this dose. */
  public List<BreedingDay> daysOfAnother() {
    return ranked().of(List.of(), reason -> reason.about() != About.DOSE);
  }

  private RankedDays ranked() {
    return new RankedDays(tools, clock, table, reasons, forbidden, farBelow, close());
  }

  /**
   * The plan; null where no set of doses is worth giving.
   *
   * @param forecast a decision due before the next result, if there is one
   * @param first the test on which all of it depends; null where it depends on none
   */
  public @Nullable Plan plan(@Nullable OnForecast forecast, @Nullable TestKind first) {
    if (choice == null) {
      return null;
    }
    ScoredPlan best = choice.best();
    return new Plan(
        times(best.slots()),
        new EggShare(best.mean(), best.p10()),
        table
            .slots()
            .get(best.slots().get(0))
            .by(CommitmentKind.ORDER)
            .map(clock::offset)
            .orElse(null),
        becauseOf(best),
        choice.others().stream()
            .map(
                other ->
                    new Plan.Alternative(
                        times(other.plan().slots()),
                        new EggShare(other.plan().mean(), other.plan().p10()),
                        other.note()))
            .toList(),
        commitments(first),
        forecast,
        new PlanNotes(semenPlan, clock, reasons).of(slots(best.slots()), doses));
  }

  /** Whether a rule speaks against a day. */
  public boolean opposed(LocalDate day) {
    return reasons.all(DayReason.class).stream()
        .anyMatch(reason -> reason.day().equals(day) && reason.effect() == Effect.OPPOSES);
  }

  /** Ids of the rules behind the plan; none where there is no plan. */
  public List<String> becauseOf() {
    return best().map(this::becauseOf).orElse(List.of());
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

  /** The times of a set of slots, on the quarter hour nearest the middle of each window. */
  public List<OffsetDateTime> times(List<Integer> places) {
    return slots(places).stream().map(slot -> clock.offset(clock.quarter(slot))).toList();
  }

  /** The days of a set of slots, in words. */
  public Part days(List<Integer> places) {
    return clock.days(slots(places));
  }
}
