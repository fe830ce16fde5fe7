package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.Conclusion;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What a rule base must hold, as checks of its text. Each lists what breaks it. */
final class RuleChecks {

  private static final Pattern RULE =
      Pattern.compile("(?ms)^rule \"([^\"]+)\"(.*?)^when\\b(.*?)^then\\b(.*?)^end\\b");
  private static final Pattern FACT = Pattern.compile("\\b([A-Z]\\w+)\\((?=\\s)");
  private static final Pattern DIFFERS =
      Pattern.compile("(?<![\\w.$])([a-z]\\w*) (?:!= (?!null\\b)|not (?:matches|contains|in)\\b)");
  private static final Pattern CONCLUSION =
      Pattern.compile("new ([A-Z]\\w+)\\(|\\b([A-Z]\\w+)\\.(?:of|value|below|above|band)\\(");
  private static final Set<String> KINDS_SAY_ALL = Set.of("Finding", "DayReason", "TestDue");
  private static final Pattern KIND = Pattern.compile("\\b(\\w+Kind|Effect|CautionLevel)\\.(\\w+)");

  /** A rule as written. */
  record Written(String file, String id, String when, String then) {

    /** Conditions with names and spaces evened out. */
    String evenConditions() {
      String even = when.replaceAll("\\s+", " ").strip();
      Map<String, String> names = new TreeMap<>();
      Matcher name = Pattern.compile("\\$\\w+").matcher(even);
      StringBuilder text = new StringBuilder();
      while (name.find()) {
        String number = names.computeIfAbsent(name.group(), key -> "#" + names.size());
        name.appendReplacement(text, number);
      }
      return name.appendTail(text).toString();
    }

    /**
     * What it concludes: the kinds of records, what is chosen in them, and the words where these
     * are what is concluded.
     */
    Set<String> conclusions() {
      Set<String> made = produced();
      Matcher words = Pattern.compile("\"[^\"]*\"").matcher(then);
      while (Collections.disjoint(made, KINDS_SAY_ALL) && words.find()) {
        made.add(words.group());
      }
      Matcher kind = KIND.matcher(then);
      while (kind.find()) {
        made.add(kind.group());
      }
      return made;
    }

    Set<String> produced() {
      Set<String> made = new TreeSet<>();
      Matcher matcher = CONCLUSION.matcher(then);
      while (matcher.find()) {
        made.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
      }
      return made;
    }

    Set<String> matched() {
      Set<String> matched = new TreeSet<>();
      Matcher matcher = FACT.matcher(when);
      while (matcher.find()) {
        matched.add(matcher.group(1));
      }
      return matched;
    }
  }

  private RuleChecks() {}

  /** The rules in some files, by file and then as written. */
  static List<Written> rules(Map<String, String> files) {
    List<Written> rules = new ArrayList<>();
    new TreeMap<>(files)
        .forEach(
            (file, text) -> {
              Matcher rule = RULE.matcher(text);
              while (rule.find()) {
                rules.add(new Written(file, rule.group(1), rule.group(3), rule.group(4)));
              }
            });
    return rules;
  }

  /**
   * Ids that are not used as the list of ids says.
   *
   * @param list a line for each id ever used, with the word {@code retired} after one that is gone
   */
  static List<String> ids(List<Written> rules, List<String> list) {
    SortedMap<String, Boolean> known = new TreeMap<>();
    List<String> wrong = new ArrayList<>();
    for (String line : list) {
      String[] words = line.strip().split("\\s+", -1);
      if (known.put(words[0], words.length > 1) != null) {
        wrong.add(words[0] + " is listed twice");
      }
    }
    Set<String> used = new TreeSet<>();
    for (Written rule : rules) {
      if (!used.add(rule.id())) {
        wrong.add(rule.id() + " names two rules");
      }
      @Nullable Boolean retired = known.get(rule.id());
      if (retired == null) {
        wrong.add(rule.id() + " is not listed: add it");
      } else if (retired) {
        wrong.add(rule.id() + " is retired and may not be used again");
      }
    }
    known.forEach(
        (id, retired) -> {
          if (!retired && !used.contains(id)) {
            wrong.add(id + " is gone: mark it retired");
          }
        });
    return wrong;
  }

  /** Pairs of rules that conclude the same from the same conditions. */
  static List<String> twins(List<Written> rules) {
    Map<String, String> seen = new TreeMap<>();
    List<String> twins = new ArrayList<>();
    for (Written rule : rules) {
      String key = rule.evenConditions() + " => " + rule.conclusions();
      @Nullable String earlier = seen.putIfAbsent(key, rule.id());
      if (earlier != null) {
        twins.add(earlier + " and " + rule.id());
      }
    }
    return twins;
  }

  /** Rules that match a conclusion which only a later stage draws. */
  static List<String> backwardStages(List<Written> rules) {
    Map<String, Set<Stage>> producers = new TreeMap<>();
    for (Written rule : rules) {
      rule.produced()
          .forEach(made -> producers.computeIfAbsent(made, k -> new TreeSet<>()).add(stage(rule)));
    }
    List<String> backward = new ArrayList<>();
    for (Written rule : rules) {
      for (String fact : rule.matched()) {
        Set<Stage> by = producers.getOrDefault(fact, Set.of());
        if (!by.isEmpty() && by.stream().allMatch(stage -> stage.compareTo(stage(rule)) > 0)) {
          backward.add(rule.id() + " waits for " + fact + " of a later stage");
        }
      }
    }
    return backward;
  }

  private static Stage stage(Written rule) {
    String word = rule.file().substring(0, rule.file().indexOf('/'));
    return Arrays.stream(Stage.values())
        .filter(stage -> stage.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  /**
   * Negated comparisons on a value that may be missing: a missing value would make them true.
   *
   * @param types kinds of facts by simple name
   */
  static List<String> negationsOfMissing(List<Written> rules, Map<String, Class<?>> types) {
    List<String> found = new ArrayList<>();
    for (Written rule : rules) {
      for (String condition : rule.when().split("\\n(?=    \\S)", -1)) {
        Matcher fact = FACT.matcher(condition);
        @Nullable Class<?> type = fact.find() ? types.get(fact.group(1)) : null;
        Matcher differs = DIFFERS.matcher(condition.replaceAll("\"[^\"]*\"", "\"\""));
        while (type != null && differs.find()) {
          String property = differs.group(1);
          boolean asked =
              condition.contains(property + " != null")
                  || condition.contains(property + " == null");
          if (mayBeMissing(type, property) && !asked) {
            found.add(rule.id() + ": " + differs.group().strip());
          }
        }
      }
    }
    return found;
  }

  private static boolean mayBeMissing(Class<?> type, String property) {
    RecordComponent[] components = type.getRecordComponents();
    return components != null
        && Arrays.stream(components)
            .filter(component -> component.getName().equals(property))
            .anyMatch(c -> c.getAnnotatedType().isAnnotationPresent(Nullable.class));
  }

  /** Kinds of facts that the conditions of some rules may name, by simple name. */
  static Map<String, Class<?>> types(Collection<Map<String, Class<?>>> imports) {
    Map<String, Class<?>> types = new TreeMap<>();
    imports.forEach(
        some ->
            some.forEach(
                (name, type) -> {
                  if (type.isRecord() || Conclusion.class.isAssignableFrom(type)) {
                    types.put(name, type);
                  }
                }));
    return types;
  }
}
