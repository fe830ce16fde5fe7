package io.github.tiderule.engine.plan;

import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.engine.days.DayTable;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.DayReason;
import io.github.tiderule.rules.conclusion.Effect;
import io.github.tiderule.rules.fact.CandidateDay;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Every day ahead with its rank, its verdict and the reasons for it. */
final class RankedDays {

  private final Tools tools;
  private final Clock clock;
  private final DayTable table;
  private final StageRun reasons;
  private final Set<LocalDate> forbidden;
  private final Set<LocalDate> farBelow;
  private final boolean close;

  /**
   * @param forbidden days that a rule vetoes
   * @param farBelow days that a rule finds far below the best one
   * @param close whether ovulation is known closely enough to recommend a day
   */
  RankedDays(
      Tools tools,
      Clock clock,
      DayTable table,
      StageRun reasons,
      Set<LocalDate> forbidden,
      Set<LocalDate> farBelow,
      boolean close) {
    this.tools = tools;
    this.clock = clock;
    this.table = table;
    this.reasons = reasons;
    this.forbidden = forbidden;
    this.farBelow = farBelow;
    this.close = close;
  }

  /**
   * The days, best first.
   *
   * @param planned the slots of the plan, maybe none
   */
  List<BreedingDay> of(List<Slot> planned) {
    return of(planned, reason -> true);
  }

  /**
   * The days, best first, by some of the reasons.
   *
   * @param planned the slots of the plan, maybe none
   */
  List<BreedingDay> of(List<Slot> planned, Predicate<DayReason> counted) {
    List<Judged> judged = new ArrayList<>();
    for (CandidateDay day : table.days()) {
      List<Reason> why = reasonsFor(day.day(), counted);
      judged.add(new Judged(day, verdict(day, why, at(planned, day.day()).isPresent()), why));
    }
    judged.sort(
        Comparator.comparing(Judged::verdict)
            .thenComparingDouble(one -> -one.day().share())
            .thenComparing(one -> one.day().day()));
    List<BreedingDay> days = new ArrayList<>();
    for (Judged one : judged) {
      CandidateDay day = one.day();
      Slot slot = at(planned, day.day()).orElse(table.slotOf(day.day()));
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

  private static Optional<Slot> at(List<Slot> planned, LocalDate day) {
    return planned.stream().filter(slot -> slot.day().equals(day)).findFirst();
  }

  private Verdict verdict(CandidateDay day, List<Reason> why, boolean planned) {
    if (forbidden.contains(day.day()) || day.share() < tools.value("planning.possible-share")) {
      return Verdict.AVOID;
    }
    if (farBelow.contains(day.day())) {
      return Verdict.AVOID;
    }
    boolean opposed = why.stream().anyMatch(reason -> reason.effect() == Effect.OPPOSES);
    return planned && !opposed && close ? Verdict.RECOMMENDED : Verdict.POSSIBLE;
  }

  private List<Reason> reasonsFor(LocalDate day, Predicate<DayReason> counted) {
    return reasons
        .ruled(DayReason.class)
        .filter(ruled -> ruled.conclusion().day().equals(day))
        .filter(ruled -> counted.test(ruled.conclusion()))
        .sorted(
            Comparator.comparing(
                    (StageResult.Ruled<DayReason> ruled) -> ruled.conclusion().effect())
                .reversed()
                .thenComparing(ruled -> ruled.rule().id()))
        .map(
            ruled ->
                new Reason(
                    ruled.rule().id(),
                    ruled.conclusion().effect(),
                    ruled.conclusion().words(),
                    ruled.rule().sources(),
                    ruled.conclusion().observations()))
        .distinct()
        .toList();
  }
}
