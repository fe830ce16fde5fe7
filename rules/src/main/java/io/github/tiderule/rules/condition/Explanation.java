package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.condition.Attempt.Miss;
import io.github.tiderule.rules.condition.Condition.Need;
import io.github.tiderule.rules.condition.expression.Check;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Why a rule spoke or kept silent over some facts. */
public final class Explanation {

  private static final Quest EVERYTHING = new Quest() {};

  private final RuleConditions rule;
  private final Given given;

  public Explanation(RuleConditions rule, Given given) {
    this.rule = rule;
    this.given = given;
  }

  /** Whether the conditions are all met by some facts. */
  public boolean met() {
    return Search.nearest(rule, given, 0, EVERYTHING).isPresent();
  }

  /** The conditions with what they saw, for the facts that come nearest to meeting them all. */
  public List<ConditionSeen> conditions() {
    return conditions(EVERYTHING);
  }

  /**
   * The conditions with what they saw when the rule spoke.
   *
   * @param matched the facts that the rule engine matched
   */
  public List<ConditionSeen> conditions(Collection<?> matched) {
    Set<Object> own = Collections.newSetFromMap(new IdentityHashMap<>());
    own.addAll(matched);
    return conditions(
        new Quest() {
          @Override
          public boolean mayMatch(Object fact) {
            return fact instanceof Parameter || own.contains(fact);
          }
        });
  }

  private List<ConditionSeen> conditions(Quest quest) {
    for (int misses = 0; misses <= rule.conditions().size(); misses++) {
      Optional<Attempt> attempt = Search.nearest(rule, given, misses, quest);
      if (attempt.isPresent()) {
        return seen(attempt.get());
      }
    }
    return List.of();
  }

  private List<ConditionSeen> seen(Attempt attempt) {
    List<ConditionSeen> seen = new ArrayList<>();
    Wording wording = new Wording(rule, attempt.match());
    for (int i = 0; i < rule.conditions().size(); i++) {
      Condition condition = rule.conditions().get(i);
      @Nullable Miss miss = attempt.at(i).orElse(null);
      seen.add(seen(condition, attempt.match(), miss, wording));
    }
    return seen;
  }

  private ConditionSeen seen(
      Condition condition, @Nullable Object[] match, @Nullable Miss miss, Wording wording) {
    if (condition.need() == Need.NONE) {
      @Nullable Object blocker = miss == null ? null : miss.nearest();
      Sentence kind = Values.plain(Values.noun(condition.type()));
      List<CheckSeen> checks = unseen(condition, wording, Outcome.NOT_TRIED);
      return condition.decidable(match)
          ? new ConditionSeen(
              blocker == null ? Outcome.MET : Outcome.UNMET,
              blocker == null
                  ? Sentence.of("no {}", kind)
                  : Sentence.of("no {}, but there is {}", kind, Values.fact(blocker)),
              checks,
              null)
          : new ConditionSeen(Outcome.NOT_TRIED, Sentence.of("no {}", kind), checks, null);
    }
    @Nullable Object fact = miss == null ? match[condition.place()] : miss.nearest();
    if (fact == null) {
      Outcome outcome =
          miss == null
              ? Outcome.MET
              : condition.decidable(match) ? Outcome.UNMET : Outcome.NOT_TRIED;
      return new ConditionSeen(
          outcome,
          outcome == Outcome.UNMET
              ? Sentence.of("{}, and there is none", Values.kind(condition.type()))
              : Values.kind(condition.type()),
          unseen(condition, wording, Outcome.NOT_TRIED),
          null);
    }
    if (fact instanceof Parameter) {
      Sentence parameter = Values.fact(fact);
      return new ConditionSeen(
          Outcome.MET, Sentence.of("the parameter {}", parameter), List.of(), parameter);
    }
    List<Check> unmet = miss == null ? List.of() : miss.unmet();
    List<CheckSeen> checks =
        condition.checks().stream()
            .map(
                check -> {
                  @Nullable Sentence saw = wording.saw(check, fact);
                  Outcome outcome =
                      !unmet.contains(check)
                          ? Outcome.MET
                          : isMissing(saw) ? Outcome.MISSING : Outcome.UNMET;
                  return new CheckSeen(wording.asks(check), check.text(), outcome, saw);
                })
            .toList();
    boolean onlyMissing =
        !unmet.isEmpty() && checks.stream().noneMatch(check -> check.outcome() == Outcome.UNMET);
    Outcome outcome = miss == null ? Outcome.MET : onlyMissing ? Outcome.MISSING : Outcome.UNMET;
    return new ConditionSeen(outcome, subject(condition, fact), checks, null);
  }

  private static boolean isMissing(@Nullable Sentence saw) {
    return Values.NOT_GIVEN.equals(saw);
  }

  private static Sentence subject(Condition condition, Object fact) {
    Sentence which = Values.fact(fact);
    return Values.saysItsKind(fact)
        ? which
        : Sentence.of("{}, {}", Values.kind(condition.type()), which);
  }

  private static List<CheckSeen> unseen(Condition condition, Wording wording, Outcome outcome) {
    return condition.checks().stream()
        .map(check -> new CheckSeen(wording.asks(check), check.text(), outcome, null))
        .toList();
  }

  /**
   * The one thing that would have to be learned for the rule to speak; absent where it is not one
   * condition short, or where what is short is known to be otherwise rather than near or unknown.
   */
  public Optional<Lack> lack() {
    if (!rule.mayBeNear() || Relevance.hopeless(rule, given)) {
      return Optional.empty();
    }
    return Search.nearest(
            rule,
            given,
            1,
            new Quest() {
              @Override
              public boolean mayMiss(Condition condition) {
                return Relevance.mayBeTold(condition);
              }

              @Override
              public boolean mayMiss(Miss miss) {
                return Relevance.mayBeTold(miss, given);
              }

              @Override
              public boolean counts(Attempt attempt) {
                return attempt.misses().isEmpty()
                    || Relevance.distance(rule, given, attempt) < Relevance.NOT_TOLD;
              }
            })
        .filter(attempt -> !attempt.misses().isEmpty())
        .map(this::lack);
  }

  private Lack lack(Attempt attempt) {
    Miss miss = attempt.misses().get(0);
    Wording wording = new Wording(rule, attempt.match());
    @Nullable Object nearest = miss.nearest();
    Condition condition = miss.condition();
    Sentence missing;
    if (nearest == null) {
      Sentence kind = Values.kind(condition.type());
      List<Sentence> wanted = condition.checks().stream().map(wording::asks).toList();
      missing = wanted.isEmpty() ? kind : Sentence.of("{}: {}", kind, Values.listed(wanted));
    } else if (miss.inTheWay()) {
      missing = Sentence.of("an answer to {}", Values.fact(nearest));
    } else {
      List<Part> lacking =
          miss.unmet().stream()
              .map(check -> lacking(wording.asks(check), wording.saw(check, nearest)))
              .distinct()
              .map(Part::of)
              .toList();
      missing =
          Sentence.of(
              "for {}: {}", Values.fact(nearest), new Part.Several(lacking, Part.Joint.SEMICOLONS));
    }
    return new Lack(missing, Relevance.distance(rule, given, attempt));
  }

  private static Sentence lacking(Sentence asks, @Nullable Sentence saw) {
    return saw == null || isMissing(saw) ? asks : Sentence.of("{}, not {}", asks, saw);
  }
}
