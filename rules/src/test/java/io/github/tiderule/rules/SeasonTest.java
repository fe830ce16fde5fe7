package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.source.Table;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whole seasons, from raw observations through the reading to the findings. */
class SeasonTest {

  private static final RuleBase RULES = RuleBase.load();

  static List<String> seasons() {
    return Table.text("/io/github/tiderule/rules/cases/seasons.txt")
        .lines()
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("seasons")
  void findsExactlyThis(String season) {
    String[] halves = season.substring(season.indexOf('|') + 1).split("=>", 2);
    Set<FindingKind> expected =
        Arrays.stream(halves[1].split(",", -1))
            .map(kind -> FindingKind.valueOf(kind.strip()))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<FindingKind> found =
        RULES
            .run(Stage.FINDINGS, StageTest.evidence(RULES, FactLine.facts(halves[0].strip())))
            .all(Finding.class)
            .stream()
            .map(Finding::kind)
            .filter(kind -> kind != FindingKind.DAY_COUNT)
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(found, is(expected));
  }
}
