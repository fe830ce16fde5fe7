package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every rule speaks where it should and is silent in a near case where it should not speak. */
class RuleCaseTest {

  private static final RuleBase RULES = RuleBase.load();

  static List<RuleCase> cases() {
    return RuleCase.all();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void speaksOrIsSilent(RuleCase one) {
    StageResult result = RULES.run(one.stage(), FactLine.facts(one.facts()));
    List<Firing> spoken =
        result.firings().stream().filter(f -> f.rule().id().equals(one.rule())).toList();
    if (one.fires()) {
      assertThat(result.firings().toString(), spoken, is(not(empty())));
      assertThat(spoken.toString(), containsString(one.says()));
    } else {
      assertThat(spoken, is(empty()));
    }
  }

  @Test
  void everyRuleHasACaseOfEitherKind() {
    List<String> lacking = new ArrayList<>();
    for (RuleCard card : RULES.cards()) {
      for (boolean fires : new boolean[] {true, false}) {
        if (cases().stream().noneMatch(c -> c.rule().equals(card.id()) && c.fires() == fires)) {
          lacking.add(card.id() + (fires ? " fires" : " silent"));
        }
      }
    }
    assertThat(lacking, is(empty()));
  }

  @Test
  void noCaseIsAboutAnUnknownRule() {
    List<String> known = RULES.cards().stream().map(RuleCard::id).toList();
    assertThat(
        cases().stream().map(RuleCase::rule).filter(rule -> !known.contains(rule)).toList(),
        is(empty()));
  }
}
