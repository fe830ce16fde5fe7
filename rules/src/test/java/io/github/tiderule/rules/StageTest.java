package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.conclusion.TestDue;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.TestingDone;
import io.github.tiderule.rules.conclusion.care.Caution;
import io.github.tiderule.rules.conclusion.reading.Accepted;
import io.github.tiderule.rules.conclusion.reading.Held;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What holds of the stages whatever they are given. */
class StageTest {

  private static final RuleBase RULES = RuleBase.load();

  private static Set<String> ids(List<? extends Conclusion> conclusions) {
    return conclusions.stream()
        .map(conclusion -> conclusion.observations().get(0))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void everyObservationIsAcceptedOrHeldAndNeverBoth() {
    int held = 0;
    int accepted = 0;
    for (long seed = 1; seed <= 500; seed++) {
      List<Object> facts = SeededCycles.of(seed);
      StageResult result = RULES.run(Stage.READING, facts);
      Set<String> heldIds = ids(result.all(Held.class));
      Set<String> acceptedIds = ids(result.all(Accepted.class));
      Set<String> all =
          facts.stream()
              .filter(Observation.class::isInstance)
              .map(fact -> ((Observation) fact).id())
              .collect(Collectors.toCollection(TreeSet::new));
      Set<String> both = new TreeSet<>(heldIds);
      both.retainAll(acceptedIds);
      Set<String> either = new TreeSet<>(heldIds);
      either.addAll(acceptedIds);
      assertThat("seed " + seed, both, is(Set.of()));
      assertThat("seed " + seed, either, is(all));
      held += heldIds.size();
      accepted += acceptedIds.size();
    }
    assertThat(held, is(greaterThan(200)));
    assertThat(accepted, is(greaterThan(200)));
  }

  @Test
  void everyAcceptedProgesteroneIsExactlyOneLevel() {
    for (long seed = 1; seed <= 200; seed++) {
      List<Object> facts = SeededCycles.of(seed);
      StageResult result = RULES.run(Stage.READING, facts);
      List<String> levels =
          result.all(Level.class).stream().map(Level::observation).sorted().toList();
      Set<String> accepted = ids(result.all(Accepted.class));
      List<String> expected =
          facts.stream()
              .filter(fact -> fact instanceof Progesterone || fact instanceof ProgesteroneBand)
              .map(fact -> ((Observation) fact).id())
              .filter(accepted::contains)
              .sorted()
              .toList();
      assertThat("seed " + seed, levels, is(expected));
    }
  }

  @Test
  void theOrderOfFactsDoesNotMatter() {
    for (long seed = 1; seed <= 60; seed++) {
      List<Object> facts = SeededCycles.of(seed);
      List<Object> evidence = evidence(RULES, facts);
      List<Object> shuffled = new ArrayList<>(facts);
      Collections.shuffle(shuffled, new Random(seed));
      List<Object> other = new ArrayList<>(evidence);
      Collections.shuffle(other, new Random(seed + 1));
      assertThat(
          RULES.run(Stage.READING, shuffled).firings(),
          is(RULES.run(Stage.READING, facts).firings()));
      assertThat(
          RULES.run(Stage.FINDINGS, other).firings(),
          is(RULES.run(Stage.FINDINGS, evidence).firings()));
    }
  }

  @Test
  void theOrderOfFactsDoesNotMatterInTheCases() {
    for (RuleCase one : RuleCase.all().stream().filter(RuleCase::fires).toList()) {
      List<Object> facts = FactLine.facts(one.facts());
      List<Object> shuffled = new ArrayList<>(facts);
      Collections.reverse(shuffled);
      assertThat(
          one.toString(),
          RULES.run(one.stage(), shuffled).firings(),
          is(RULES.run(one.stage(), facts).firings()));
    }
  }

  @Test
  void noConclusionIsDrawnTwice() {
    for (long seed = 1; seed <= 200; seed++) {
      List<Object> facts = SeededCycles.of(seed);
      for (StageResult result :
          List.of(
              RULES.run(Stage.READING, facts), RULES.run(Stage.FINDINGS, evidence(RULES, facts)))) {
        List<Conclusion> all =
            result.firings().stream().flatMap(firing -> firing.concluded().stream()).toList();
        assertThat("seed " + seed, new HashSet<>(all).size(), is(all.size()));
      }
    }
  }

  @Test
  void testingIsAlwaysEitherDueOrDoneAndNeverBoth() {
    for (long seed = 1; seed <= 150; seed++) {
      List<Object> facts = evidence(RULES, SeededCycles.of(seed));
      facts.addAll(RULES.run(Stage.FINDINGS, facts).all(Finding.class));
      StageResult next = RULES.run(Stage.NEXT, facts);
      Set<TestKind> due =
          next.all(TestDue.class).stream().map(TestDue::kind).collect(Collectors.toSet());
      Set<TestKind> done =
          next.all(TestingDone.class).stream().map(TestingDone::kind).collect(Collectors.toSet());
      assertThat("seed " + seed, due.size() + done.size(), is(greaterThan(0)));
      due.retainAll(done);
      assertThat("seed " + seed, due, is(Set.of()));
    }
  }

  @Test
  void sentencesAreShortAndLeaveTheFullStopToTheReport() {
    for (RuleCase one : RuleCase.all().stream().filter(RuleCase::fires).toList()) {
      for (Firing firing : RULES.run(one.stage(), FactLine.facts(one.facts())).firings()) {
        for (Conclusion conclusion : firing.concluded()) {
          assertThat(conclusion.sentence(), not(endsWith(".")));
          assertThat(
              conclusion.sentence(),
              conclusion.sentence().length(),
              is(lessThanOrEqualTo(conclusion instanceof Caution ? 200 : 160)));
        }
      }
    }
  }

  /** What the reading of some facts leaves as evidence, beside what is known of the season. */
  static List<Object> evidence(RuleBase rules, List<Object> facts) {
    StageResult reading = rules.run(Stage.READING, facts);
    Set<String> accepted = ids(reading.all(Accepted.class));
    List<Object> evidence = new ArrayList<>(reading.all(Level.class));
    evidence.addAll(reading.all(Question.class));
    for (Object fact : facts) {
      if (!(fact instanceof Observation observation)) {
        evidence.add(fact);
      } else if (!(fact instanceof Progesterone)
          && !(fact instanceof ProgesteroneBand)
          && accepted.contains(observation.id())) {
        evidence.add(fact);
      }
    }
    return evidence;
  }
}
