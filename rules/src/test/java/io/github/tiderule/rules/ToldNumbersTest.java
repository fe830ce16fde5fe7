package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.sentence.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Numbers that the rules tell, of themselves and of a season, are parameters that they go by. */
class ToldNumbersTest {

  private static final RuleBase RULES = RuleBase.load();
  private static final Map<String, RuleCard> CARDS =
      RULES.cards().stream().collect(Collectors.toMap(RuleCard::id, Function.identity()));

  private static final Pattern RULE = Pattern.compile("(?ms)^rule \"([^\"]+)\"(.*?)^end$");
  private static final Pattern WORDS = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

  /** Parameters that a rule tells of though it does not go by them itself, and why. */
  private static final String OF_OTHERS = "told-of-others.csv";

  record Told(String rule, String template) {}

  /** What rules tell, with a place for something. */
  static List<Told> told() {
    return allTold().stream().filter(one -> one.template().contains("{")).toList();
  }

  /** All that stands in quotes in the rules' texts. */
  static List<Told> allTold() {
    List<Told> told = new ArrayList<>();
    for (String text : RuleTexts.load().files().values()) {
      for (MatchResult rule : RULE.matcher(text).results().toList()) {
        WORDS
            .matcher(rule.group(2))
            .results()
            .map(words -> new Told(rule.group(1), words.group(1)))
            .forEach(told::add);
      }
    }
    return told;
  }

  @Test
  void everyPlaceTakesAKnownParameterInKnownForms() {
    Set<String> wrong = new TreeSet<>();
    for (Told one : told()) {
      for (Template.Place place : Template.of(one.template()).places()) {
        if (!place.name().isEmpty() && RULES.parameters().find(place.name()).isEmpty()) {
          wrong.add(one.rule() + " " + place.name());
        }
      }
    }
    assertThat(wrong, is(empty()));
  }

  /** The first columns of a list beside this class, with commas between them. */
  static Set<String> listed(String name, int columns) {
    try (InputStream file =
        Objects.requireNonNull(ToldNumbersTest.class.getResourceAsStream(name))) {
      return new String(file.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> String.join(",", List.of(line.split(",", columns + 1)).subList(0, columns)))
          .collect(Collectors.toCollection(TreeSet::new));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void aRuleTellsOfTheParametersItGoesBy() {
    Set<String> foreign = new TreeSet<>();
    Set<String> own = new TreeSet<>();
    Set<String> listed = listed(OF_OTHERS, 2);
    for (Told one : told()) {
      for (Template.Place place : Template.of(one.template()).places()) {
        if (!place.name().isEmpty()) {
          RuleCard card = Objects.requireNonNull(CARDS.get(one.rule()));
          Set<String> kind = card.parameters().contains(place.name()) ? own : foreign;
          kind.add(one.rule() + "," + place.name());
        }
      }
    }
    assertThat(foreign, is(listed));
    assertThat(own.size(), is(greaterThan(90)));
  }
}
