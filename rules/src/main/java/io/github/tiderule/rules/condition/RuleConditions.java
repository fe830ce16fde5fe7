package io.github.tiderule.rules.condition;

import java.util.List;
import java.util.Map;

/**
 * The conditions of one rule.
 *
 * @param conditions in the order written
 * @param places the place of each name in a match, by name ({@code $a})
 * @param size how many places a match has
 * @param imports classes that the tests may name, by simple name
 */
public record RuleConditions(
    String rule,
    List<Condition> conditions,
    Map<String, Integer> places,
    int size,
    Map<String, Class<?>> imports) {

  public RuleConditions {
    conditions = List.copyOf(conditions);
    places = Map.copyOf(places);
    imports = Map.copyOf(imports);
  }
}
