package io.github.tiderule.api.report;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Influence;
import io.github.tiderule.engine.advice.Ovulation;
import java.util.Comparator;
import java.util.List;

/** How sure a report is, and what made it so. */
final class Certainties {

  /** A season without ovulation is named from this probability on. */
  private static final double WORTH_NAMING = 0.02;

  private static final double MORE_LIKELY_THAN_NOT = 0.5;

  private Certainties() {}

  static void write(Page page, CycleRecord cycle, Advice advice) {
    page.heading(Section.HOW_SURE);
    Ovulation ovulation = advice.ovulation();
    if (ovulation == null) {
      page.indented(2, "Nothing can be said of ovulation yet.");
      return;
    }
    boolean past = !ovulation.median().isAfter(advice.asOf());
    page.indented(
        2,
        (past ? "She most likely ovulated" : "She will most likely ovulate")
            + " around "
            + LocalWords.about(ovulation.median())
            + "; 9 times in 10 between "
            + LocalWords.about(ovulation.p05())
            + " and "
            + LocalWords.about(ovulation.p95())
            + ".");
    page.indented(
        2,
        ovulation.confirmed()
            ? "Ovulation is proven by the tests so far."
            : "Ovulation is not proven yet.");
    if (ovulation.noOvulationProbability() >= WORTH_NAMING) {
      page.indented(
          2,
          "In about "
              + Shares.inHundred(ovulation.noOvulationProbability())
              + " such seasons she does not ovulate this time.");
    }
    if (cycle.observations().isEmpty()) {
      page.indented(2, "There is no observation yet: this rests on the day of first blood alone.");
    }
  }

  static void writeWeights(Page page, CycleRecord cycle, List<Influence> influences) {
    if (influences.isEmpty()) {
      return;
    }
    page.heading(Section.WEIGHTS);
    ObservationWords names = new ObservationWords(cycle);
    Influence most =
        influences.stream()
            .max(
                Comparator.comparingDouble(
                    influence ->
                        Math.abs(influence.ovulationShiftHours())
                            + Math.abs(influence.widthChangeHours())))
            .orElseThrow();
    page.indented(
        2,
        "Most of all "
            + names.of(most.observation())
            + ": "
            + shift(most.ovulationShiftHours())
            + ", and it made the 9-in-10 span "
            + width(most.widthChangeHours())
            + ".");
    for (Influence influence : influences) {
      if (influence.oddProbability() > MORE_LIKELY_THAN_NOT) {
        page.indented(
            2,
            "The odd one out is "
                + names.of(influence.observation())
                + ": it is out of line with the others ("
                + Shares.inHundred(influence.oddProbability())
                + ") and counts for little. Is it right?");
      }
    }
  }

  /** What an observation did to the middle of ovulation, as a clause. */
  static String shift(double hours) {
    if (Math.abs(hours) < 0.5) {
      return "it left the middle of ovulation where it was";
    }
    return "it moved the middle of ovulation "
        + Shares.hours(hours)
        + (hours < 0 ? " earlier" : " later");
  }

  /** By how much a span changed. */
  static String width(double hours) {
    if (Math.abs(hours) < 0.5) {
      return "neither narrower nor wider";
    }
    return Shares.hours(hours) + (hours < 0 ? " narrower" : " wider");
  }
}
