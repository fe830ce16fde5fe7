package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.parameter.OverlayReader;
import io.github.tiderule.rules.parameter.OverlayReading;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What rules say of themselves has the numbers of the parameters in force. */
class RuleCardTest {

  private static final RuleBase RULES = RuleBase.load();
  private static final RuleBase LOCAL =
      RULES.with(
          ((OverlayReading.Read)
                  OverlayReader.read(
                      "clinic.csv",
                      """
                      id,value,reason,by,since
                      days.commit.days,2,ours,Dr A,2026-12-01
                      reading.ask-unit-above,120,ours,Dr A,2026-12-01
                      """,
                      RULES.parameters()))
              .overlay());

  private static RuleCard card(RuleBase rules, String id) {
    return rules.cards().stream().filter(card -> card.id().equals(id)).findFirst().orElseThrow();
  }

  @Test
  void aCardTellsTheNumbersInForce() {
    assertThat(card(RULES, "DAY-018").looksAt(), startsWith("today and tomorrow with"));
    assertThat(card(LOCAL, "DAY-018").looksAt(), startsWith("today and the next two days with"));
    assertThat(
        card(LOCAL, "DAY-018").sentence(), startsWith("Given today and the next two days with"));
    assertThat(
        card(LOCAL, "DAY-018").told().looksAt().template(),
        is(card(RULES, "DAY-018").told().looksAt().template()));
  }

  @Test
  void concernsHoldTheSameCards() {
    assertThat(
        LOCAL.concerns().stream().flatMap(concern -> concern.cards().stream()).toList(),
        hasItem(card(LOCAL, "DAY-018")));
  }

  @Test
  void aRuleThatFiresDoesSoWithItsCardInForce() {
    Progesterone value =
        new Progesterone(
            "p1",
            Instant.parse("2027-01-08T07:00:00Z"),
            null,
            150,
            null,
            Unit.NG_PER_ML,
            Method.RIA,
            null,
            null,
            null,
            List.of(),
            null);
    assertThat(why(RULES, value), containsString("below 100 ng/mL"));
    assertThat(why(LOCAL, value), containsString("below 120 ng/mL"));
  }

  private static String why(RuleBase rules, Progesterone value) {
    return rules.run(Stage.READING, List.of(value)).firings().stream()
        .map(Firing::rule)
        .filter(rule -> rule.id().equals("RDG-002"))
        .findFirst()
        .orElseThrow()
        .why();
  }
}
