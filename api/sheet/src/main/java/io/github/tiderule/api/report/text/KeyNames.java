package io.github.tiderule.api.report.text;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Writes what people call an observation where a sentence has its key, as in {@code The rise at p3
 * goes on}. Only whole tokens that are keys of the cycle are taken for one, and only keys of
 * letters and figures, which no other word of a sentence looks like; the id of a rule and the name
 * of a laboratory do. A key in brackets stands: its name stands before it.
 */
public final class KeyNames {

  private static final Pattern UNMISTAKABLE = Pattern.compile("[A-Za-z]{1,12}-?\\d{1,6}");
  private static final Pattern RULE = Pattern.compile("[A-Z]{3}-\\d{3}");
  private static final Pattern AFTER_A_TIME =
      Pattern.compile("(?<=\\d\\d:\\d\\d) \\(([A-Za-z]{1,12}-?\\d{1,6})\\)");
  private static final String NOUN =
      "(?<noun>\\b(?:progesterone|value|band|smear|test|folds|vaginoscopy|sign|ultrasound|breeding"
          + "|scan|radiograph|temperature|report|result|reading) )?";

  /** The day, where the sentence says it itself. */
  private static final String DAY =
      "(?: of (?:Mon|Tue|Wed|Thu|Fri|Sat|Sun) \\d{1,2} [A-Z][a-z]{2}\\b(?!,? \\d))?";

  private final Map<String, String> kinds = new HashMap<>();
  private final Map<String, String> moments = new HashMap<>();
  private final Set<String> alike = new HashSet<>();
  private final @Nullable Pattern pattern;

  /** For the sentences about one cycle. */
  public KeyNames(CycleRecord cycle) {
    Set<String> seen = new HashSet<>();
    Set<String> laboratories =
        cycle.observations().stream()
            .filter(Progesterone.class::isInstance)
            .map(one -> ((Progesterone) one).series().laboratory())
            .collect(Collectors.toSet());
    for (Observation one : cycle.observations()) {
      if (isUnmistakable(one.id()) && !laboratories.contains(one.id())) {
        OffsetDateTime at = one.at().atZone(cycle.zone()).toOffsetDateTime();
        String kind = ObservationWords.kind(one);
        String moment = LocalWords.shortDay(at.toLocalDate()) + " " + LocalWords.clock(at);
        kinds.put(one.id(), kind);
        moments.put(one.id(), moment);
        if (!seen.add(kind + moment)) {
          alike.add(kind + moment);
        }
      }
    }
    String keys =
        kinds.keySet().stream()
            .sorted(Comparator.comparingInt(String::length).reversed())
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    pattern =
        keys.isEmpty()
            ? null
            : Pattern.compile(
                NOUN
                    + "(?<![\\w(./-])(?<keys>(?:"
                    + keys
                    + ")(?:, (?:"
                    + keys
                    + ")(?![\\w/-]))*)(?![\\w)/-]|\\.\\w)"
                    + DAY);
  }

  /** The same without keys in brackets after a time, where the time tells them apart. */
  public String plain(String sentence) {
    return AFTER_A_TIME
        .matcher(in(sentence))
        .replaceAll(
            found -> {
              String key = found.group(1);
              boolean needed = alike.contains(kinds.get(key) + moments.get(key));
              return kinds.containsKey(key) && !needed
                  ? ""
                  : Matcher.quoteReplacement(found.group());
            });
  }

  private static boolean isUnmistakable(String key) {
    return UNMISTAKABLE.matcher(key).matches() && !RULE.matcher(key).matches();
  }

  /** A sentence with names in it. */
  public String in(String sentence) {
    if (pattern == null) {
      return sentence;
    }
    Matcher found = pattern.matcher(sentence);
    StringBuilder said = new StringBuilder();
    while (found.find()) {
      String name = name(found.group("noun"), found.group("keys"), found.start() == 0);
      found.appendReplacement(said, Matcher.quoteReplacement(name));
    }
    return found.appendTail(said).toString();
  }

  private String name(@Nullable String noun, String keys, boolean first) {
    StringBuilder said = new StringBuilder();
    String kindBefore = "";
    for (String key : keys.split(", ", -1)) {
      String kind = kinds.getOrDefault(key, "");
      String moment = moments.getOrDefault(key, "");
      if (!said.isEmpty()) {
        said.append(", ");
      } else if (noun != null) {
        said.append(noun).append("of ");
      }
      if (noun == null && !kind.equals(kindBefore)) {
        said.append(first && said.isEmpty() ? "The " : "the ").append(kind).append(" of ");
      }
      kindBefore = kind;
      said.append(moment);
      if (alike.contains(kind + moment)) {
        said.append(" (").append(key).append(')');
      }
    }
    return said.toString();
  }
}
