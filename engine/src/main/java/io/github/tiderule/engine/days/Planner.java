package io.github.tiderule.engine.days;

import io.github.tiderule.rules.fact.Semen;
import io.github.tiderule.rules.fact.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Chooses the set of slots to breed in, and others worth knowing. */
public final class Planner {

  /** Most matings of a plan without a given number of doses. */
  private static final int MOST_MATINGS = 3;

  private final Parameters parameters;

  public Planner(Parameters parameters) {
    this.parameters = parameters;
  }

  /**
   * A plan with its alternatives.
   *
   * @param best the set that meets most eggs
   * @param others at most three others, each with what it is good for
   */
  public record Choice(ScoredPlan best, List<Other> others) {

    /** Another plan. */
    public record Other(ScoredPlan plan, String note) {}
  }

  /** Least hours between two doses. */
  public double spacing(SemenPlan plan) {
    Double said = plan.hoursBetween();
    if (said != null) {
      return said;
    }
    return parameters.value(
        plan.semen() == Semen.NATURAL
            ? "planning.natural-hours-between"
            : "planning.hours-between");
  }

  /**
   * The best plan on days that are not forbidden; empty where no slot is left.
   *
   * @param forbidden days that a rule vetoes
   */
  public Optional<Choice> choose(DayTable table, SemenPlan plan, Set<LocalDate> forbidden) {
    PlanSearch search =
        table.search(forbidden, spacing(plan), parameters.value("planning.near-tie"));
    Integer doses = plan.doses();
    Optional<ScoredPlan> best =
        doses == null
            ? search.worthwhile(MOST_MATINGS, parameters.value("planning.worth-another"))
            : search.best(doses).stream().findFirst();
    return best.map(chosen -> new Choice(chosen, others(table, search, chosen)));
  }

  private static List<Choice.Other> others(DayTable table, PlanSearch search, ScoredPlan chosen) {
    List<Choice.Other> others = new ArrayList<>();
    List<ScoredPlan> sameSize = search.best(chosen.slots().size());
    sameSize.stream()
        .filter(plan -> differs(table, plan, chosen))
        .findFirst()
        .ifPresent(plan -> others.add(new Choice.Other(plan, "next best on other days")));
    sameSize.stream()
        .filter(plan -> plan.p10() > chosen.p10() + 0.01)
        .max(java.util.Comparator.comparingDouble(ScoredPlan::p10))
        .filter(plan -> others.stream().noneMatch(other -> other.plan().equals(plan)))
        .ifPresent(
            plan -> others.add(new Choice.Other(plan, "safest if ovulation lies at an edge")));
    if (chosen.slots().size() > 1) {
      search.best(chosen.slots().size() - 1).stream()
          .findFirst()
          .ifPresent(
              plan ->
                  others.add(
                      new Choice.Other(
                          plan,
                          "one dose less, at a cost of "
                              + Math.max(0, Math.round(100 * (chosen.mean() - plan.mean())))
                              + " in 100 eggs")));
    }
    return others;
  }

  private static boolean differs(DayTable table, ScoredPlan a, ScoredPlan b) {
    return !days(table, a).equals(days(table, b));
  }

  /** The local days of a plan. */
  public static List<LocalDate> days(DayTable table, ScoredPlan plan) {
    return plan.slots().stream().map(slot -> table.slots().get(slot).day()).toList();
  }
}
