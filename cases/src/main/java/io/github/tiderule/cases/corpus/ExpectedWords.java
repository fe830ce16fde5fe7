package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.tiderule.engine.advice.reasoning.Influence;
import io.github.tiderule.engine.advice.reasoning.Query;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** What is expected to be asked, warned of, concluded, used, said and left unsaid. */
final class ExpectedWords {

  private ExpectedWords() {}

  static Map<String, Expecting> keys() {
    return Map.of(
        "refused",
            (expected, answer, differences) ->
                differences.require(false, "the file is refused", "it was read"),
        "questions", ExpectedWords::questions,
        "cautions", ExpectedWords::cautions,
        "rules", ExpectedWords::rules,
        "influence", ExpectedWords::influence,
        "said", (expected, answer, differences) -> said(expected, answer, differences, true),
        "notSaid", (expected, answer, differences) -> said(expected, answer, differences, false));
  }

  private static void questions(
      JsonNode expected, Outcome.Advised answer, Differences differences) {
    Set<String> asked =
        answer.advice().questions().stream().map(Query::about).collect(Collectors.toSet());
    if (Bounds.none(expected)) {
      differences.require(asked.isEmpty(), "none", answer.advice().questions());
      return;
    }
    differences.each(
        expected,
        answer,
        Map.of(
            "about", (node, a, d) -> all(node, asked, true, d),
            "notAbout", (node, a, d) -> all(node, asked, false, d)));
  }

  private static void cautions(JsonNode expected, Outcome.Advised answer, Differences differences) {
    expected
        .properties()
        .forEach(
            entry -> {
              List<String> texts =
                  answer.advice().cautions().stream()
                      .filter(caution -> caution.level().word().equals(entry.getKey()))
                      .map(caution -> caution.text().toString())
                      .toList();
              Differences here = differences.under(entry.getKey());
              if (Bounds.none(entry.getValue())) {
                here.require(texts.isEmpty(), "none", texts);
                return;
              }
              for (String words : Bounds.words(entry.getValue())) {
                here.require(
                    texts.stream().anyMatch(text -> contains(text, words)),
                    "a caution that says \"" + words + "\"",
                    texts);
              }
            });
  }

  private static void rules(JsonNode expected, Outcome.Advised answer, Differences differences) {
    Set<String> fired =
        answer.advice().reasoning().trace().stream()
            .map(TraceLine::rule)
            .collect(Collectors.toSet());
    differences.each(
        expected,
        answer,
        Map.of(
            "fire", (node, a, d) -> all(node, fired, true, d),
            "silent", (node, a, d) -> all(node, fired, false, d)));
  }

  private static void influence(
      JsonNode expected, Outcome.Advised answer, Differences differences) {
    Set<String> used =
        answer.advice().reasoning().influence().stream()
            .map(Influence::observation)
            .collect(Collectors.toSet());
    differences.each(
        expected,
        answer,
        Map.of(
            "used", (node, a, d) -> all(node, used, true, d),
            "unused", (node, a, d) -> all(node, used, false, d)));
  }

  /** Holds that each word is among some, or that none is. */
  private static void all(
      JsonNode words, Set<String> among, boolean present, Differences differences) {
    for (String word : Bounds.words(words)) {
      differences.require(
          among.contains(word) == present,
          word + (present ? " is there" : " is not there"),
          among.stream().sorted().toList());
    }
  }

  private static void said(
      JsonNode expected, Outcome.Advised answer, Differences differences, boolean present) {
    for (String words : Bounds.words(expected)) {
      boolean found = contains(answer.report(), words);
      differences.require(
          found == present,
          "the report " + (present ? "says" : "does not say") + " \"" + words + "\"",
          found ? around(answer.report(), words) : "it does not");
    }
  }

  private static boolean contains(String text, String words) {
    return text.toLowerCase(Locale.ROOT).contains(words.toLowerCase(Locale.ROOT));
  }

  /** The place where some words stand, with a little of what surrounds them. */
  private static String around(String text, String words) {
    int at = text.toLowerCase(Locale.ROOT).indexOf(words.toLowerCase(Locale.ROOT));
    int margin = 40;
    return "… "
        + text.substring(
            Math.max(0, at - margin), Math.min(text.length(), at + words.length() + margin))
        + " …";
  }
}
