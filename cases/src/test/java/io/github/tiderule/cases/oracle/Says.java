package io.github.tiderule.cases.oracle;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** What each rule ought to say, and about what; also the rules that ought to say nothing. */
final class Says {

  private final Map<String, Set<String>> all = new TreeMap<>();

  /** Notes what a rule says; about nothing, only that the rule is reckoned. */
  void say(String rule, Object... about) {
    Set<String> said = all.computeIfAbsent(rule, key -> new TreeSet<>());
    if (about.length > 0) {
      said.add(List.of(about).toString());
    }
  }

  Map<String, Set<String>> all() {
    return all;
  }
}
