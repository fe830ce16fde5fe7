package io.github.tiderule.rules.condition;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The conditions of one rule.
 *
 * @param conditions in the order written
 * @param places the place of each name in a match, by name ({@code $a})
 * @param size how many places a match has
 * @param imports classes that the tests may name, by simple name
 * @param mayBeNear whether it could be a near miss that is worth telling, whatever the facts
 */
public record RuleConditions(
    String rule,
    List<Condition> conditions,
    Map<String, Integer> places,
    int size,
    Map<String, Class<?>> imports,
    boolean mayBeNear) {

  /** The conditions of a rule; whether it may be a near miss is worked out once. */
  public RuleConditions(
      String rule,
      List<Condition> conditions,
      Map<String, Integer> places,
      int size,
      Map<String, Class<?>> imports) {
    this(rule, conditions, places, size, imports, Relevance.possible(conditions));
  }

  public RuleConditions {
    conditions = List.copyOf(conditions);
    places = Map.copyOf(places);
    imports = Map.copyOf(imports);
  }

  /** The values of a match by name. */
  Map<String, @Nullable Object> named(@Nullable Object[] match) {
    Map<String, @Nullable Object> names = new HashMap<>();
    places.forEach((name, place) -> names.put(name, match[place]));
    return names;
  }
}
