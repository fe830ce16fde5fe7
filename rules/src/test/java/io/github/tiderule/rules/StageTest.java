package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.conclusion.Accepted;
import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.conclusion.Held;
import io.github.tiderule.rules.conclusion.Level;
import io.github.tiderule.rules.fact.Observation;
import io.github.tiderule.rules.fact.Progesterone;
import io.github.tiderule.rules.fact.ProgesteroneBand;
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
      List<Object> evidence = evidence(facts);
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
    for (RuleCase one : RuleCase.all()) {
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
          List.of(RULES.run(Stage.READING, facts), RULES.run(Stage.FINDINGS, evidence(facts)))) {
        List<Conclusion> all =
            result.firings().stream().flatMap(firing -> firing.concluded().stream()).toList();
        assertThat("seed " + seed, new HashSet<>(all).size(), is(all.size()));
      }
    }
  }

  /** What the reading of some facts leaves as evidence, beside what is known of the season. */
  private static List<Object> evidence(List<Object> facts) {
    StageResult reading = RULES.run(Stage.READING, facts);
    Set<String> accepted = ids(reading.all(Accepted.class));
    List<Object> evidence = new ArrayList<>(reading.all(Level.class));
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
