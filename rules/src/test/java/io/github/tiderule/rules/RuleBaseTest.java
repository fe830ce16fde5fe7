package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class RuleBaseTest {

  private static final RuleBase RULES = RuleBase.load();

  @Test
  void loadsEveryRuleAsWritten() {
    assertThat(RULES.cards().size(), greaterThan(0));
    assertThat(RULES.fingerprint(), startsWith("sha256:"));
  }

  @Test
  void asksForAMissingUnitWithBothReadings() {
    Progesterone value =
        new Progesterone(
            "p1",
            Instant.parse("2027-01-08T07:00:00Z"),
            null,
            6.1,
            null,
            null,
            Method.UNKNOWN,
            null,
            null,
            null,
            List.of(),
            null);
    StageResult result = RULES.run(Stage.READING, List.of(value));
    assertThat(result.all(Question.class), hasSize(1));
    assertThat(result.firings().get(0).observations(), contains("p1"));
  }
}
