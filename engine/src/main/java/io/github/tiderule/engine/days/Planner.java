package io.github.tiderule.engine.days;

import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Chooses the set of slots to breed in, and others worth knowing. */
public final class Planner {

  private final Parameters parameters;

  public Planner(Parameters parameters) {
    this.parameters = parameters;
  }

  /**
   * A plan with its alternatives.
   *
   * @param best the set that meets most eggs
   * @param others at most three others, no two alike, each with what it is good for
   */
  public record Choice(ScoredPlan best, List<Other> others) {

    /** Another plan. */
    public record Other(ScoredPlan plan, Sentence note) {}
  }

  /**
   * Least hours between the middles of two windows: as the file says, or as is usual less the slack
   * there is inside of windows.
   */
  public double spacing(SemenPlan plan) {
    Double said = plan.hoursBetween();
    if (said != null) {
      return said;
    }
    String usual =
        plan.semen() == Semen.NATURAL ? "planning.natural-hours-between" : "planning.hours-between";
    return parameters.value(usual) - parameters.value("planning.hours-slack");
  }

  /**
   * Most doses still to be given: those there are, less breedings already done with the same semen;
   * where no number is given, as many matings as are ever planned, less those done.
   */
  public int dosesLeft(SemenPlan plan, List<BreedingDone> given) {
    Integer said = plan.doses();
    int there = said == null ? (int) parameters.value("planning.most-matings") : said;
    long used = given.stream().filter(breeding -> breeding.semen() == plan.semen()).count();
    return (int) Math.max(0, there - used);
  }

  /** A search over the slots of days that are not forbidden. */
  public PlanSearch search(DayTable table, SemenPlan plan, Set<LocalDate> forbidden) {
    return table.search(parameters, forbidden, spacing(plan));
  }

  /**
   * The best plan; empty where no dose or no slot is left.
   *
   * @param doses most doses to give
   */
  public Optional<Choice> choose(DayTable table, PlanSearch search, SemenPlan plan, int doses) {
    if (doses < 1) {
      return Optional.empty();
    }
    Optional<ScoredPlan> best =
        plan.doses() == null
            ? search.worthwhile(doses, parameters.value("planning.worth-another"))
            : search.best(doses).stream().findFirst();
    return best.map(chosen -> new Choice(chosen, others(table, search, chosen)));
  }

  /**
   * Every second day from the first slot on, as long as a day is worth it; empty where no slot is.
   *
   * @param worth least share of a day
   */
  public Optional<Choice> everySecondDay(
      DayTable table, PlanSearch search, Set<LocalDate> forbidden, double worth) {
    Set<LocalDate> days =
        table.days().stream()
            .filter(day -> day.share() >= worth && !forbidden.contains(day.day()))
            .map(CandidateDay::day)
            .collect(Collectors.toUnmodifiableSet());
    double apart = spacing(SemenPlan.naturalUnlimited());
    List<Integer> chosen = new ArrayList<>();
    for (int s = 0; s < table.slots().size(); s++) {
      Slot slot = table.slots().get(s);
      boolean room =
          chosen.isEmpty()
              || Hours.between(
                      table.slots().get(chosen.get(chosen.size() - 1)).middle(), slot.middle())
                  >= apart - parameters.value("planning.hours-slack");
      if (room
          && days.contains(slot.day())
          && chosen.size() < (int) parameters.value("planning.most-matings")) {
        chosen.add(s);
      }
    }
    return chosen.isEmpty()
        ? Optional.empty()
        : Optional.of(new Choice(search.score(List.copyOf(chosen)), List.of()));
  }

  private List<Choice.Other> others(DayTable table, PlanSearch search, ScoredPlan chosen) {
    List<Choice.Other> others = new ArrayList<>();
    List<ScoredPlan> sameSize = search.best(chosen.slots().size());
    sameSize.stream()
        .filter(plan -> !days(table, plan).equals(days(table, chosen)))
        .findFirst()
        .ifPresent(
            plan -> others.add(new Choice.Other(plan, Sentence.of("next best on other days"))));
    sameSize.stream()
        .filter(plan -> plan.p10() > chosen.p10() + parameters.value("planning.safer-by"))
        .max(Comparator.comparingDouble(ScoredPlan::p10))
        .ifPresent(plan -> addSafest(others, plan, chosen));
    if (chosen.slots().size() > 1) {
      search.best(chosen.slots().size() - 1).stream()
          .findFirst()
          .ifPresent(plan -> others.add(new Choice.Other(plan, oneLess(chosen, plan))));
    }
    return others;
  }

  private static void addSafest(List<Choice.Other> others, ScoredPlan safest, ScoredPlan chosen) {
    Sentence note =
        Sentence.of(
            "safest if ovulation lies at an edge: 1 time in 10 fewer than {} instead of {}",
            inHundred(safest.p10()),
            inHundred(chosen.p10()));
    boolean known = others.removeIf(other -> other.plan().equals(safest));
    others.add(
        new Choice.Other(
            safest, known ? Sentence.of("next best on other days, and {}", note) : note));
  }

  private static Sentence oneLess(ScoredPlan chosen, ScoredPlan fewer) {
    long cost = inHundred(Math.max(0, chosen.mean() - fewer.mean()));
    return cost == 0
        ? Sentence.of("one dose less, at a cost of less than 1 in 100 eggs")
        : Sentence.of("one dose less, at a cost of {} in 100 eggs", cost);
  }

  private static long inHundred(double share) {
    return Math.round(100 * share);
  }

  /** The local days of a plan. */
  public static List<LocalDate> days(DayTable table, ScoredPlan plan) {
    return days(table, plan.slots());
  }

  /** The local days of a set of slots. */
  public static List<LocalDate> days(DayTable table, List<Integer> slots) {
    return slots.stream().map(slot -> table.slots().get(slot).day()).toList();
  }
}
