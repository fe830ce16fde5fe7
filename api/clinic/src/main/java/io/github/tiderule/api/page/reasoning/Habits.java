package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What the usual rules of thumb would say of the same record, to be held against the plan. They are
 * common practice without a published source, and weak evidence.
 */
final class Habits {

  /** A progesterone above this, in ng/mL, is taken as ovulation. Common practice. */
  static final double PAST = 5;

  /** Days from that value to breeding, with all semen but frozen. Common practice. */
  static final int DAYS_AFTER = 2;

  /** Days from that value to breeding with frozen semen. Common practice. */
  static final int DAYS_AFTER_FROZEN = 3;

  /** Fixed days after first blood, which is day 0. Common practice. */
  static final List<Integer> ODD_DAYS = List.of(9, 11, 13);

  /** The same of another habit. Common practice. */
  static final List<Integer> EVEN_DAYS = List.of(10, 12, 14);

  /** Days from a mating to whelping. Common practice. */
  static final int PREGNANCY_DAYS = 63;

  private static final String HELD = "held";

  private final CycleRecord cycle;
  private final Advice advice;

  private Habits(CycleRecord cycle, Advice advice) {
    this.cycle = cycle;
    this.advice = advice;
  }

  /** When to breed, by each rule of thumb. */
  static List<Habit> breeding(CycleRecord cycle, Advice advice) {
    Habits habits = new Habits(cycle, advice);
    return List.of(
        habits.pastFive(),
        habits.fixed("odd-days", ODD_DAYS),
        habits.fixed("even-days", EVEN_DAYS));
  }

  /**
   * When to whelp, counted from the first mating done, or else from the first planned; absent where
   * there is neither.
   */
  static @Nullable Habit whelping(CycleRecord cycle, Advice advice) {
    Habits habits = new Habits(cycle, advice);
    LocalDate done =
        cycle.observations().stream()
            .filter(BreedingDone.class::isInstance)
            .map(one -> habits.day(one.at()))
            .findFirst()
            .orElse(null);
    Plan plan = advice.plan();
    LocalDate planned = plan == null ? null : plan.at().get(0).toLocalDate();
    LocalDate from = done == null ? planned : done;
    return from == null || advice.whelping() == null
        ? null
        : new Habit(
            done == null ? "whelping-planned" : "whelping",
            from.toString(),
            "",
            List.of(from.plusDays(PREGNANCY_DAYS)));
  }

  private LocalDate day(Instant at) {
    return at.atZone(cycle.zone()).toLocalDate();
  }

  private Habit pastFive() {
    List<Progesterone> values =
        cycle.observations().stream()
            .filter(Progesterone.class::isInstance)
            .map(Progesterone.class::cast)
            .filter(this::isReadable)
            .toList();
    int past =
        IntStream.range(0, values.size()).filter(i -> isPast(values.get(i))).findFirst().orElse(-1);
    boolean frozen = cycle.semenPlan().semen() == Semen.FROZEN;
    String kind = frozen ? "past-five-frozen" : "past-five";
    if (past < 0) {
      return new Habit(kind, "", "past-five-not-yet", List.of());
    }
    return new Habit(
        kind,
        values.get(past).id(),
        past == 0 ? "past-five-at-once" : "",
        List.of(day(values.get(past).at()).plusDays(frozen ? DAYS_AFTER_FROZEN : DAYS_AFTER)));
  }

  private boolean isReadable(Progesterone value) {
    return value.statedUnit() != null
        && advice.observationNotes().stream()
            .noneMatch(note -> note.observation().equals(value.id()) && note.use().equals(HELD));
  }

  private static boolean isPast(Progesterone value) {
    return value.comparator() == Comparator.ABOVE
        ? value.ngPerMl() >= PAST
        : value.comparator() == null && value.ngPerMl() > PAST;
  }

  private Habit fixed(String kind, List<Integer> after) {
    LocalDate on = cycle.firstBlood().on();
    if (on == null) {
      return new Habit(kind, "", "no-first-blood", List.of());
    }
    return new Habit(
        kind,
        on.toString(),
        cycle.firstBlood().certainty() == Certainty.SEEN ? "" : "first-blood-guess",
        after.stream().map(on::plusDays).toList());
  }
}
