package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.condition.ConditionSeen;
import io.github.tiderule.rules.condition.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is told of a rule's conditions agrees with what the rule engine did. */
class AccountTest {

  private static final RuleBase RULES = RuleBase.load();

  private static List<String> disagreements(Stage stage, List<?> facts, String where) {
    StageResult result = RULES.run(stage, facts);
    Account account = RULES.account(stage, facts, result);
    Set<String> spoke =
        result.firings().stream().map(f -> f.rule().id()).collect(Collectors.toSet());
    return RULES.cards().stream()
        .filter(card -> card.stage() == stage)
        .filter(card -> account.met(card.id()) != spoke.contains(card.id()))
        .map(card -> card.id() + " in " + where)
        .toList();
  }

  @Test
  void everyRuleCanBeToldConditionByCondition() {
    Account account = RULES.account(Stage.READING, List.of(), RULES.run(Stage.READING, List.of()));
    assertThat(account.conditions("RDG-050"), is(not(empty())));
    List<String> untold = new ArrayList<>();
    for (Stage stage : Stage.values()) {
      Account of = RULES.account(stage, List.of(), RULES.run(stage, List.of()));
      RULES.cards().stream()
          .filter(card -> card.stage() == stage && of.conditions(card.id()).isEmpty())
          .forEach(card -> untold.add(card.id()));
    }
    assertThat(untold, is(empty()));
  }

  @Test
  void conditionsAreMetWhereTheRuleEngineFiresAndNowhereElse() {
    List<String> wrong = new ArrayList<>();
    for (RuleCase one : RuleCase.all()) {
      wrong.addAll(disagreements(one.stage(), FactLine.facts(one.facts()), one.toString()));
    }
    for (long seed = 1; seed <= 150; seed++) {
      List<Object> facts = SeededCycles.of(seed);
      wrong.addAll(disagreements(Stage.READING, facts, "seed " + seed));
      List<Object> evidence = StageTest.evidence(RULES, facts);
      wrong.addAll(disagreements(Stage.FINDINGS, evidence, "seed " + seed));
      evidence.addAll(RULES.run(Stage.FINDINGS, evidence).all(Finding.class));
      wrong.addAll(disagreements(Stage.NEXT, evidence, "seed " + seed));
      for (Stage stage : List.of(Stage.SAFETY, Stage.COURSE, Stage.SHEET, Stage.NOTES)) {
        wrong.addAll(disagreements(stage, evidence, "seed " + seed));
      }
    }
    assertThat(wrong, is(empty()));
  }

  @Test
  void whatAFiringSawIsAllMet() {
    int told = 0;
    for (RuleCase one : RuleCase.all().stream().filter(RuleCase::fires).toList()) {
      List<Object> facts = FactLine.facts(one.facts());
      StageResult result = RULES.run(one.stage(), facts);
      Account account = RULES.account(one.stage(), facts, result);
      for (Firing firing : result.firings()) {
        for (ConditionSeen seen : account.conditions(firing)) {
          assertThat(one + " " + seen, seen.outcome(), is(Outcome.MET));
          told++;
        }
      }
    }
    assertThat(told, is(greaterThan(500)));
  }

  private static List<Account.NearMiss> nearMisses(Stage stage, String line) {
    List<Object> facts = FactLine.facts(line);
    return RULES.account(stage, facts, RULES.run(stage, facts)).nearMisses();
  }

  private static List<String> told(Stage stage, String line) {
    return nearMisses(stage, line).stream()
        .map(miss -> miss.rule().id() + " " + miss.missing())
        .toList();
  }

  @Test
  void aNumberJustShortOfItsThresholdIsANearMiss() {
    assertThat(
        told(Stage.FINDINGS, "v p1 7 3.0; v p2 9 4.8"),
        hasItem("FND-010 for p2: level at least 5 ng/mL, not 4.8 ng/mL"));
    assertThat(
        told(Stage.FINDINGS, "v p1 8.6 0.6; v p2 9 1.9"),
        hasItem("FND-003 for p2: at least 12 h after p1, not 9.6 h"));
  }

  @Test
  void anOpenQuestionInTheWayIsANearMiss() {
    assertThat(
        told(Stage.FINDINGS, "v p1 7 5.0; v p2 8 9.0; question p2"),
        hasItem("FND-011 an answer to the question about p2"));
  }

  @Test
  void aValueNobodyGaveIsMissingAndNotFalse() {
    List<Object> facts = FactLine.facts("now 50; noblood; sign s1 49 unwell");
    Account account = RULES.account(Stage.SAFETY, facts, RULES.run(Stage.SAFETY, facts));
    assertThat(
        account.nearMisses().stream().map(miss -> miss.rule().id()).toList(), hasItem("CAR-011"));
    assertThat(
        account.conditions("CAR-011").stream().map(ConditionSeen::outcome).toList(),
        hasItem(Outcome.MISSING));
  }

  @Test
  void whatIsFarOffOrSettledIsNoNearMiss() {
    for (String line : List.of("bare", "now 10", "semen frozen transcervical; v p1 9 0.4")) {
      assertThat(line, told(Stage.FINDINGS, line), is(empty()));
    }
    assertThat(told(Stage.DAYS, "v p1 9 6; day 12 ov=2"), is(empty()));
  }

  @Test
  void nearMissesAreSilentRulesTheNearestFirst() {
    for (RuleCase one : RuleCase.all()) {
      List<Object> facts = FactLine.facts(one.facts());
      StageResult result = RULES.run(one.stage(), facts);
      Set<String> spoke =
          result.firings().stream().map(f -> f.rule().id()).collect(Collectors.toSet());
      double before = 0;
      for (Account.NearMiss miss : nearMisses(one.stage(), one.facts())) {
        assertThat(one.toString(), spoke, not(hasItem(miss.rule().id())));
        assertThat(miss.missing().toString(), miss.distance(), is(greaterThanOrEqualTo(before)));
        before = miss.distance();
      }
    }
  }
}
