package io.github.tiderule.cases.oracle;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.cases.Nightly;
import io.github.tiderule.rules.Firing;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.conclusion.DayReason;
import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.parameter.OverlayReader;
import io.github.tiderule.rules.parameter.OverlayReading;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Central rules say what a plain reckoning from their titles and parameters says. */
class RuleOracleTest {

  private static final RuleBase RULES = RuleBase.load();
  private static final int SEASONS = Nightly.of(250, 2000);
  private static final int LEAST_SPOKEN = SEASONS / 100;
  private static final int LEAST_RULES = 25;

  /** What the rules say of a season, in the oracle's words. */
  private static Map<String, Set<String>> spoken(RuleBase rules, DrawnSeason season) {
    Map<String, Set<String>> spoken = new TreeMap<>();
    add(spoken, rules, Stage.READING, season.forReading());
    add(spoken, rules, Stage.FINDINGS, season.forFindings());
    add(spoken, rules, Stage.DAYS, season.forDays());
    add(spoken, rules, Stage.NEXT, season.forNext());
    for (Stage stage : DrawnSeason.CARE) {
      add(spoken, rules, stage, season.forCare());
    }
    return spoken;
  }

  private static void add(
      Map<String, Set<String>> spoken, RuleBase rules, Stage stage, List<Object> facts) {
    for (Firing firing : rules.run(stage, facts).firings()) {
      Set<String> about = spoken.computeIfAbsent(firing.rule().id(), id -> new TreeSet<>());
      firing.concluded().forEach(conclusion -> about.add(about(stage, conclusion)));
    }
  }

  private static String about(Stage stage, Conclusion conclusion) {
    if (conclusion instanceof DayReason reason) {
      return List.of(reason.day()).toString();
    }
    if (stage == Stage.NEXT || DrawnSeason.CARE.contains(stage)) {
      return "[yes]";
    }
    return conclusion instanceof Finding || !(stage == Stage.READING)
        ? List.of(conclusion.observations()).toString()
        : conclusion.observations().toString();
  }

  private static List<String> differences(RuleBase rules, Parameters parameters, int seasons) {
    List<String> differences = new ArrayList<>();
    for (long seed = 1; seed <= seasons; seed++) {
      DrawnSeason season = new DrawnSeason(seed);
      Map<String, Set<String>> spoken = spoken(rules, season);
      for (Map.Entry<String, Set<String>> ought : PlainOracle.of(season, parameters).entrySet()) {
        Set<String> is = spoken.getOrDefault(ought.getKey(), Set.of());
        if (!is.equals(ought.getValue())) {
          differences.add(
              "seed " + seed + ": " + ought.getKey() + " says " + is + ", not " + ought.getValue());
        }
      }
    }
    return differences;
  }

  @Test
  void theRulesSayWhatThePlainReckoningSays() {
    assertThat(differences(RULES, RULES.parameters(), SEASONS), is(empty()));
  }

  @Test
  void everyRuleOfTheOracleSpeaksOftenEnoughForThatToMeanSomething() {
    Map<String, Integer> often = new TreeMap<>();
    for (long seed = 1; seed <= SEASONS; seed++) {
      PlainOracle.of(new DrawnSeason(seed), RULES.parameters())
          .forEach((rule, says) -> often.merge(rule, says.isEmpty() ? 0 : 1, Integer::sum));
    }
    assertThat(often.size(), is(greaterThanOrEqualTo(LEAST_RULES)));
    assertThat(
        often.entrySet().stream().filter(entry -> entry.getValue() < LEAST_SPOKEN).toList(),
        is(empty()));
  }

  @Test
  void aThresholdMovedOnOneSideOnlyIsNoticed() {
    OverlayReading reading =
        OverlayReader.read(
            "moved",
            """
            id,value,reason,by,since
            findings.ovulation.level,5.6,to be noticed,a test,2027-01-01
            days.closed.veto,0.8,to be noticed,a test,2027-01-01
            """,
            RULES.parameters());
    RuleBase moved = RULES.with(((OverlayReading.Read) reading).overlay());
    String all = differences(moved, RULES.parameters(), 300).toString();
    for (String rule : List.of("FND-010", "DAY-020", "DAY-021")) {
      assertThat(rule, all.contains(rule), is(true));
    }
    assertThat(differences(moved, moved.parameters(), 300), is(empty()));
    assertThat(all, is(not("[]")));
  }
}
