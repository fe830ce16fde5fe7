package io.github.tiderule.engine.plan;

import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.rules.conclusion.About;
import io.github.tiderule.rules.conclusion.DayReason;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.List;

/** What else there is to know of a plan. */
final class PlanNotes {

  private final SemenPlan semenPlan;
  private final Clock clock;
  private final StageRun reasons;

  PlanNotes(SemenPlan semenPlan, Clock clock, StageRun reasons) {
    this.semenPlan = semenPlan;
    this.clock = clock;
    this.reasons = reasons;
  }

  /**
   * Notes on the slots of a plan.
   *
   * @param doses how many doses there are
   */
  List<Sentence> of(List<Slot> slots, int doses) {
    List<Sentence> notes = new ArrayList<>();
    if (semenPlan.doses() == null && semenPlan.semen() == Semen.NATURAL && everyOther(slots)) {
      notes.add(
          Sentence.of(
              "Mate her every other day from {} while she stands.",
              clock.day(slots.get(0).middle())));
    } else if (semenPlan.doses() != null && slots.size() < doses) {
      notes.add(
          Sentence.of(
              "There are more doses than times that suit: {} of {} can be given.",
              slots.size(),
              doses));
    }
    if (reasons.all(DayReason.class).stream().anyMatch(reason -> reason.about() == About.DOSE)) {
      notes.add(
          Sentence.of(
              "Egg shares count timing alone. How much a dose below the usual least lowers the odds"
                  + " nobody has measured well enough to put into them."));
    }
    return notes;
  }

  /** Whether there are several, each two days after the one before. */
  private static boolean everyOther(List<Slot> slots) {
    for (int i = 1; i < slots.size(); i++) {
      if (!slots.get(i - 1).day().plusDays(2).equals(slots.get(i).day())) {
        return false;
      }
    }
    return slots.size() > 1;
  }
}
