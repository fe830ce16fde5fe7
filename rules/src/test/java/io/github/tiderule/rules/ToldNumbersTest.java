package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.sentence.Template;
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
  private static final Map<String, Map<String, String>> OF_OTHERS =
      Map.of(
          "FND-020",
          Map.of(
              "findings.slow.per-day", "the lower edge of the usual pace, told beside the upper"),
          "FND-023",
          Map.of("findings.ovulation.level", "the level about which such values stand"),
          "FND-042",
          Map.of("findings.lh.support-hours", "what the rule it waits for goes by"));

  private record Told(String rule, String template) {}

  private static List<Told> told() {
    List<Told> told = new ArrayList<>();
    for (String text : RuleTexts.load().files().values()) {
      for (MatchResult rule : RULE.matcher(text).results().toList()) {
        WORDS
            .matcher(rule.group(2))
            .results()
            .map(words -> new Told(rule.group(1), words.group(1)))
            .filter(one -> one.template().contains("{"))
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

  @Test
  void aRuleTellsOfTheParametersItGoesBy() {
    Set<String> foreign = new TreeSet<>();
    Set<String> own = new TreeSet<>();
    Set<String> listed = new TreeSet<>();
    OF_OTHERS.forEach((rule, ids) -> ids.keySet().forEach(id -> listed.add(rule + " " + id)));
    for (Told one : told()) {
      for (Template.Place place : Template.of(one.template()).places()) {
        if (!place.name().isEmpty()) {
          RuleCard card = Objects.requireNonNull(CARDS.get(one.rule()));
          Set<String> kind = card.parameters().contains(place.name()) ? own : foreign;
          kind.add(one.rule() + " " + place.name());
        }
      }
    }
    assertThat(foreign, is(listed));
    assertThat(own.size(), is(greaterThan(90)));
  }
}
