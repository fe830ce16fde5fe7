package io.github.tiderule.rules;

import io.github.tiderule.rules.source.Table;
import java.util.ArrayList;
import java.util.List;

/**
 * One line of a table of cases: {@code RDG-001 fires | p p1 5 2.1 - => Held}.
 *
 * @param fires whether the rule must speak or stay silent
 * @param facts the facts in the words of {@link FactLine}
 * @param says words that its conclusions must hold; empty when any will do
 */
record RuleCase(Stage stage, String rule, boolean fires, String facts, String says) {

  static List<RuleCase> all() {
    List<RuleCase> cases = new ArrayList<>();
    for (Stage stage : Stage.values()) {
      cases.addAll(of(stage));
    }
    return cases;
  }

  private static List<RuleCase> of(Stage stage) {
    List<RuleCase> cases = new ArrayList<>();
    String rule = "";
    for (String line :
        Table.text("/io/github/tiderule/rules/cases/" + stage.word() + ".txt").lines().toList()) {
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      String[] halves = line.split("\\|", 2);
      String[] head = halves[0].strip().split("\\s+", -1);
      rule = head.length == 2 ? head[0] : rule;
      String verdict = head[head.length - 1];
      if (halves.length < 2 || !(verdict.equals("fires") || verdict.equals("silent"))) {
        throw new IllegalArgumentException("not a case: " + line);
      }
      String[] body = halves[1].split("=>", 2);
      cases.add(
          new RuleCase(
              stage,
              rule,
              verdict.equals("fires"),
              body[0].strip(),
              body.length == 2 ? body[1].strip() : ""));
    }
    return cases;
  }

  @Override
  public String toString() {
    return rule + (fires ? " fires: " : " is silent: ") + facts;
  }
}
