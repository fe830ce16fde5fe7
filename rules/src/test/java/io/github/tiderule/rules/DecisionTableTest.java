package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.rules.source.Table;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.drools.decisiontable.InputType;
import org.drools.decisiontable.SpreadsheetCompiler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A table as text says the same as the table that the build compiles. */
class DecisionTableTest {

  private static final String ROOT = "/io/github/tiderule/rulebase/";

  static List<String> tables() {
    return Table.text(ROOT + "index.txt")
        .lines()
        .filter(file -> file.endsWith(DecisionTable.SUFFIX))
        .toList();
  }

  /** The rules of some text by name, without white space. */
  private static SortedMap<String, String> rules(String text) {
    SortedMap<String, String> rules = new TreeMap<>();
    Pattern.compile("(?ms)^rule \"([^\"]+)\"(.*?)^end$")
        .matcher(text.replaceAll("(?m)^//.*$", ""))
        .results()
        .forEach(match -> rules.put(match.group(1), match.group(2).replaceAll("\\s+", "")));
    return rules;
  }

  @ParameterizedTest
  @MethodSource("tables")
  void readsATableAsItsCompilerDoes(String file) {
    String table = Table.text(ROOT + file);
    String compiled =
        new SpreadsheetCompiler()
            .compile(
                new ByteArrayInputStream(table.getBytes(StandardCharsets.UTF_8)), InputType.CSV);
    assertThat(rules(compiled).keySet(), is(not(empty())));
    assertThat(rules(DecisionTable.asRules(table)), is(rules(compiled)));
  }

  @Test
  void refusesATextWithoutATable() {
    IllegalStateException refusal =
        assertThrows(IllegalStateException.class, () -> DecisionTable.asRules("RuleSet,x\n"));
    assertThat(refusal.getMessage(), containsString("no decision table"));
  }

  @Test
  void refusesPatternsAboveTheSnippets() {
    assertThrows(
        IllegalStateException.class,
        () -> DecisionTable.asRules("RuleTable t\nNAME\nLevel\nx\nrule\nNXT-999\n"));
  }
}
