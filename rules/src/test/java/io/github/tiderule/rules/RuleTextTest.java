package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.rules.parameter.Parameter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The rules as written keep the house's form. */
class RuleTextTest {

  private static final Path RULEBASE =
      Path.of("src/main/resources/io/github/tiderule/rulebase").toAbsolutePath();
  private static final RuleBase RULES = RuleBase.load();
  private static final Map<Chapter, String> PREFIX =
      Map.of(
          Chapter.READING, "RDG",
          Chapter.FINDINGS, "FND",
          Chapter.DAYS, "DAY",
          Chapter.NEXT, "NXT",
          Chapter.CARE, "CAR");

  /** What must not stand in a rule file, and why. */
  private static final Map<String, Pattern> FORBIDDEN =
      Map.of(
          "salience: stages order the rules", Pattern.compile("\\bsalience\\b"),
          "update or modify: facts do not change",
              Pattern.compile("\\b(update|modify|retract|delete)\\s*[({]"),
          "plain insert: conclusions rest on their reasons", Pattern.compile("\\binsert\\s*\\("),
          "negated comparison: missing values make it true", Pattern.compile("!\\s*\\("),
          "logic in a consequence", Pattern.compile("\\b(if|for|while|switch)\\s*\\("),
          "half constraint", Pattern.compile("(&&|\\|\\|)\\s*(==|!=|<|>)"),
          "text block", Pattern.compile("\"\"\""));

  private static Map<String, String> files() {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(RULEBASE)) {
      for (Path path : walk.filter(Files::isRegularFile).toList()) {
        String name = RULEBASE.relativize(path).toString().replace('\\', '/');
        if (name.endsWith(".drl")) {
          files.put(name, Files.readString(path));
        } else if (name.endsWith(DecisionTable.SUFFIX)) {
          files.put(name, DecisionTable.asRules(Files.readString(path)));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return files;
  }

  @Test
  void theIndexNamesEveryFileInOrder() throws IOException {
    assertThat(
        Files.readAllLines(RULEBASE.resolve("index.txt")), is(List.copyOf(files().keySet())));
  }

  @Test
  void filesAreShort() {
    files()
        .forEach(
            (file, text) -> {
              if (file.endsWith(".drl")) {
                assertThat(file, (int) text.lines().count(), is(lessThanOrEqualTo(150)));
              }
            });
  }

  @Test
  void filesHoldNothingForbidden() {
    List<String> found = new ArrayList<>();
    files()
        .forEach(
            (file, text) ->
                FORBIDDEN.forEach(
                    (why, pattern) -> {
                      if (pattern.matcher(text).find()) {
                        found.add(file + ": " + why);
                      }
                    }));
    assertThat(found, is(empty()));
  }

  @Test
  void thresholdsAreParametersNotLiterals() {
    Pattern literal = Pattern.compile("(>=|<=|<|>)\\s*[1-9]");
    List<String> found = new ArrayList<>();
    files()
        .forEach(
            (file, text) ->
                text.lines()
                    .filter(line -> !line.strip().startsWith("@"))
                    .filter(line -> literal.matcher(line.replaceAll("\"[^\"]*\"", "")).find())
                    .forEach(line -> found.add(file + ": " + line.strip())));
    assertThat(found, is(empty()));
  }

  @Test
  void everyRuleIsNamedByItsStageAndTitledOnce() {
    List<String> wrong = new ArrayList<>();
    for (RuleCard card : RULES.cards()) {
      if (!card.id().matches(PREFIX.get(card.chapter()) + "-\\d{3}")) {
        wrong.add(card.id());
      }
    }
    assertThat(wrong, is(empty()));
    assertThat(
        RULES.cards().stream().map(RuleCard::title).distinct().count(),
        is((long) RULES.cards().size()));
    assertThat(RULES.cards().size(), is(greaterThanOrEqualTo(60)));
  }

  @Test
  void theIdIsTheNameOfTheRule() {
    Pattern head = Pattern.compile("(?m)^rule \"([^\"]+)\"\\s+@id\\( \"([^\"]+)\" \\)");
    long heads =
        files().values().stream()
            .flatMap(text -> head.matcher(text).results())
            .peek(match -> assertThat(match.group(2), is(match.group(1))))
            .count();
    assertThat(heads, is((long) RULES.cards().size()));
  }

  @Test
  void everySourceResolves() {
    for (RuleCard card : RULES.cards()) {
      assertThat(card.id(), card.sources(), is(not(empty())));
      card.sources()
          .forEach(key -> assertThat(card.id() + " " + key, RULES.sources().contains(key)));
    }
    for (Parameter parameter : RULES.parameters().all()) {
      assertThat(parameter.id(), RULES.sources().contains(parameter.source()));
    }
  }

  @Test
  void everyParameterOfARuleStageIsUsed() {
    List<String> used =
        RULES.cards().stream().flatMap(card -> card.parameters().stream()).distinct().toList();
    for (Chapter chapter : Chapter.values()) {
      for (Parameter parameter : RULES.parameters().of(chapter.word())) {
        boolean ofAMethod =
            Stream.of("reading.factor.", "findings.noise.").anyMatch(parameter.id()::startsWith);
        if (!ofAMethod) {
          assertThat(used, hasItem(parameter.id()));
        }
      }
    }
  }

  @Test
  void noRuleDeniesWhatRestsOnItsOwnConclusion() {
    Map<String, Set<String>> restsOn = new TreeMap<>();
    Map<String, Set<String>> denies = new TreeMap<>();
    for (String rule : String.join("\n", files().values()).split("(?m)^rule ", -1)) {
      String[] halves = rule.split("(?m)^then", 2);
      if (halves.length < 2) {
        continue;
      }
      Set<String> denied = new TreeSet<>();
      halves[0]
          .lines()
          .filter(line -> line.strip().startsWith("not "))
          .forEach(line -> denied.addAll(concluded(line)));
      for (String made : concluded(halves[1])) {
        restsOn.computeIfAbsent(made, key -> new TreeSet<>()).addAll(concluded(halves[0]));
        denies.computeIfAbsent(made, key -> new TreeSet<>()).addAll(denied);
      }
    }
    List<String> circles = new ArrayList<>();
    denies.forEach(
        (made, denied) -> {
          for (String one : denied) {
            if (reaches(restsOn, one, made, new TreeSet<>())) {
              circles.add(made + " denies " + one + ", which rests on it");
            }
          }
        });
    assertThat(circles, is(empty()));
    assertThat(denies.get("FindingKind.LH_UNSUPPORTED"), hasItem("FindingKind.LH_SURGE"));
  }

  private static Set<String> concluded(String text) {
    Set<String> kinds = new TreeSet<>();
    Pattern.compile("FindingKind\\.[A-Z_]+|\\b(Held|Level|Accepted)\\s*\\(|\\bLevel\\.")
        .matcher(text)
        .results()
        .forEach(match -> kinds.add(match.group().replaceAll("[\\s(]|(?<=Level)\\.", "")));
    return kinds;
  }

  private static boolean reaches(
      Map<String, Set<String>> restsOn, String start, String goal, Set<String> seen) {
    if (start.equals(goal)) {
      return true;
    }
    return seen.add(start)
        && restsOn.getOrDefault(start, Set.of()).stream()
            .anyMatch(next -> reaches(restsOn, next, goal, seen));
  }
}
