package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.Moment;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
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

  @Test
  void aRunThatFailsLeavesNothingBehind() {
    List<Object> facts = FactLine.facts("now 50; sign s1 49 unwell; female born=2018-06-01");
    StageResult before = RULES.run(Stage.SAFETY, facts);
    List<Object> broken = new ArrayList<>(facts);
    // of the last moment there is no local day east of Greenwich
    broken.add(new Moment(Instant.MAX, ZoneOffset.ofHours(14)));
    assertThrows(RuntimeException.class, () -> RULES.run(Stage.SAFETY, broken));
    assertThat(RULES.run(Stage.SAFETY, facts).firings(), is(before.firings()));
    assertThat(RULES.run(Stage.SAFETY, List.of()).firings(), is(empty()));
  }

  @Test
  void manyThreadsHearTheSame() {
    List<Object> facts = FactLine.facts("now 50; sign s1 49 unwell");
    List<Firing> alone = RULES.run(Stage.SAFETY, facts).firings();
    assertThat(alone, is(not(empty())));
    assertThat(
        IntStream.range(0, 64)
            .parallel()
            .mapToObj(i -> RULES.run(Stage.SAFETY, facts).firings())
            .allMatch(alone::equals),
        is(true));
  }
}
