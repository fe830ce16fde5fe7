package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.condition.Attempt.Miss;
import io.github.tiderule.rules.condition.expression.Binding;
import io.github.tiderule.rules.condition.expression.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Looks for the facts that come nearest to meeting a rule. A condition counts as missed only where
 * no fact meets it beside those matched before it, so what is reported is the first thing that
 * stands between the facts and the rule.
 */
final class Search {

  private final List<Condition> conditions;
  private final Given given;
  private final int mostMisses;
  private final Quest quest;
  private final @Nullable Object[] match;
  private final List<Miss> misses = new ArrayList<>();
  private @Nullable Attempt best;

  private Search(RuleConditions rule, Given given, int mostMisses, Quest quest) {
    this.conditions = rule.conditions();
    this.given = given;
    this.mostMisses = mostMisses;
    this.quest = quest;
    this.match = new Object[rule.size()];
  }

  /**
   * The nearest attempt, if one comes near enough; of equally near ones the last.
   *
   * @param mostMisses how many conditions may be missed
   * @param quest which facts, misses and attempts count
   */
  static Optional<Attempt> nearest(RuleConditions rule, Given given, int mostMisses, Quest quest) {
    Search search = new Search(rule, given, mostMisses, quest);
    search.from(0);
    return Optional.ofNullable(search.best);
  }

  private void from(int index) {
    if (index == conditions.size()) {
      Attempt attempt = new Attempt(match.clone(), List.copyOf(misses));
      if (attempt.asNearAs(best) && quest.counts(attempt)) {
        best = attempt;
      }
      return;
    }
    Condition condition = conditions.get(index);
    switch (condition.need()) {
      case ONE -> one(index, condition);
      case SOME -> some(index, condition);
      case NONE -> none(index, condition);
    }
  }

  private void one(int index, Condition condition) {
    if (condition.isParameter()) {
      parameter(index, condition);
      return;
    }
    boolean any = false;
    if (condition.decidable(match)) {
      for (Object fact : given.candidates(condition)) {
        if (quest.mayMatch(fact) && take(fact, condition)) {
          any = true;
          from(index + 1);
        }
      }
      clear(condition);
    }
    if (!any) {
      missed(index, condition);
    }
  }

  /** A parameter that is asked for by its id alone is there. */
  private void parameter(int index, Condition condition) {
    put(given.candidates(condition).get(0), condition);
    from(index + 1);
  }

  private void some(int index, Condition condition) {
    if (condition.decidable(match) && firstMeeting(condition) != null) {
      from(index + 1);
    } else {
      missed(index, condition);
    }
  }

  private void none(int index, Condition condition) {
    @Nullable Object blocker = condition.decidable(match) ? firstMeeting(condition) : null;
    if (blocker == null) {
      from(index + 1);
    } else if (mayMiss(condition)) {
      with(new Miss(index, condition, blocker, List.of()));
    }
  }

  private void missed(int index, Condition condition) {
    if (mayMiss(condition)) {
      with(nearMiss(index, condition));
    }
  }

  private boolean mayMiss(Condition condition) {
    return misses.size() < mostMisses && quest.mayMiss(condition);
  }

  private void with(Miss miss) {
    if (quest.mayMiss(miss)) {
      misses.add(miss);
      from(miss.index() + 1);
      misses.remove(misses.size() - 1);
    }
  }

  private Miss nearMiss(int index, Condition condition) {
    @Nullable Object nearest = null;
    List<Check> fewest = List.of();
    if (condition.decidable(match)) {
      for (Object fact : given.candidates(condition)) {
        if (taken(fact)) {
          continue;
        }
        List<Check> unmet = unmet(fact, condition);
        if (nearest == null || unmet.size() <= fewest.size()) {
          nearest = fact;
          fewest = unmet;
        }
      }
    }
    return new Miss(index, condition, nearest, fewest);
  }

  /** Whether a fact meets an earlier condition already, and so is not the one that is lacking. */
  private boolean taken(Object fact) {
    for (Object matched : match) {
      if (matched == fact) {
        return true;
      }
    }
    return false;
  }

  private @Nullable Object firstMeeting(Condition condition) {
    @Nullable Object first = null;
    for (Object fact : given.candidates(condition)) {
      if (take(fact, condition) && together(condition.with(), 0)) {
        first = fact;
        break;
      }
    }
    clear(condition);
    return first;
  }

  private boolean together(List<Condition> all, int index) {
    if (index == all.size()) {
      return true;
    }
    Condition condition = all.get(index);
    boolean found = false;
    for (Object fact : given.candidates(condition)) {
      if (take(fact, condition) && together(all, index + 1)) {
        found = true;
        break;
      }
    }
    clear(condition);
    return found;
  }

  /** Puts a fact and what it gives names to into the match; says whether it meets the condition. */
  private boolean take(Object fact, Condition condition) {
    put(fact, condition);
    for (Check check : condition.checks()) {
      if (!check.holds(match)) {
        return false;
      }
    }
    return true;
  }

  private void put(Object fact, Condition condition) {
    match[condition.place()] = fact;
    for (Binding binding : condition.bindings()) {
      match[binding.place()] = binding.of(match);
    }
  }

  private void clear(Condition condition) {
    match[condition.place()] = null;
    for (Binding binding : condition.bindings()) {
      match[binding.place()] = null;
    }
  }

  private List<Check> unmet(Object fact, Condition condition) {
    put(fact, condition);
    List<Check> unmet = new ArrayList<>();
    for (Check check : condition.checks()) {
      if (!check.holds(match)) {
        unmet.add(check);
      }
    }
    clear(condition);
    return unmet;
  }
}
