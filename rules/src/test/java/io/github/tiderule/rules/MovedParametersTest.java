package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.parameter.Overlay;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import io.github.tiderule.rules.sentence.Template;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A clinic moves a parameter, each in turn, and no number told of it stays where it was. */
class MovedParametersTest {

  private static final RuleBase RULES = RuleBase.load();
  private static final Map<String, List<RuleCase>> SPEAKING =
      RuleCase.all().stream()
          .filter(RuleCase::fires)
          .collect(Collectors.groupingBy(RuleCase::rule));

  /** Where in its range a parameter is moved to; near its own value a rule still speaks. */
  private static final List<Double> PLACES =
      Nightly.of(List.of(0.0, 1.0), List.of(0.0, 0.25, 0.5, 0.75, 1.0));

  private static final double NEAR = 0.03;

  /** A sentence that was told under a protocol of a clinic. */
  private record Heard(String rule, boolean inCase, Sentence sentence) {}

  private static Set<Double> moves(Parameter parameter) {
    Set<Double> moves = new LinkedHashSet<>();
    double span = parameter.max() - parameter.min();
    PLACES.forEach(place -> moves.add(Math.min(parameter.max(), parameter.min() + place * span)));
    for (double near : new double[] {-NEAR, NEAR}) {
      double moved = parameter.value() + near * span;
      if (moved >= parameter.min() && moved <= parameter.max()) {
        moves.add(moved);
      }
    }
    moves.remove(parameter.value());
    return moves;
  }

  private static RuleBase with(Parameter parameter, double value) {
    LocalDate since = LocalDate.of(2026, 1, 1);
    return RULES.with(
        new Overlay(
            "moved",
            "sha256:" + "0".repeat(64),
            List.of(
                new Overlay.Change(
                    parameter.id(),
                    parameter.value(),
                    value,
                    parameter.unit(),
                    "to see what is told",
                    "a vet",
                    since))));
  }

  /** What rules that go by a parameter, or tell of it, say of themselves and of their cases. */
  private static List<Heard> heard(RuleBase rules, String parameter, Set<String> telling) {
    List<Heard> heard = new ArrayList<>();
    for (RuleCard card : rules.cards()) {
      if (!card.parameters().contains(parameter) && !telling.contains(card.id())) {
        continue;
      }
      RuleCard.Told told = card.told();
      Stream.of(told.title(), told.looksAt(), told.concludes(), told.why())
          .forEach(words -> heard.add(new Heard(card.id(), false, words)));
      for (RuleCase one : SPEAKING.getOrDefault(card.id(), List.of())) {
        rules.run(one.stage(), FactLine.facts(one.facts())).firings().stream()
            .filter(firing -> firing.rule().id().equals(card.id()))
            .flatMap(firing -> firing.concluded().stream())
            .map(Conclusion::words)
            .forEach(words -> heard.add(new Heard(card.id(), true, words)));
      }
    }
    return heard;
  }

  /** Parameters by the rules whose words name them. */
  private static Map<String, Set<String>> tellers() {
    Map<String, Set<String>> tellers = new TreeMap<>();
    ToldNumbersTest.told()
        .forEach(
            told ->
                Template.of(told.template()).places().stream()
                    .map(Template.Place::name)
                    .filter(name -> !name.isEmpty())
                    .forEach(
                        name ->
                            tellers
                                .computeIfAbsent(name, any -> new TreeSet<>())
                                .add(told.rule())));
    return tellers;
  }

  private static Stream<Part> parts(Sentence sentence) {
    return sentence.parts().stream().flatMap(MovedParametersTest::within);
  }

  private static Stream<Part> within(Part part) {
    if (part instanceof Part.Inner inner) {
      return parts(inner.sentence());
    }
    return part instanceof Part.Several several
        ? several.parts().stream().flatMap(MovedParametersTest::within)
        : Stream.of(part);
  }

  @Test
  void whatIsToldOfAParameterMovesWithIt() {
    Map<String, Set<String>> tellers = tellers();
    Set<String> stale = new TreeSet<>();
    Set<String> told = new TreeSet<>();
    Set<String> inCases = new TreeSet<>();
    for (Parameter parameter : RULES.parameters().all()) {
      Set<String> telling = tellers.getOrDefault(parameter.id(), Set.of());
      for (double value : moves(parameter)) {
        for (Heard one : heard(with(parameter, value), parameter.id(), telling)) {
          parts(one.sentence())
              .filter(Part.Quantity.class::isInstance)
              .map(Part.Quantity.class::cast)
              .filter(quantity -> parameter.id().equals(quantity.parameter()))
              .forEach(
                  quantity -> {
                    told.add(parameter.id());
                    if (one.inCase()) {
                      inCases.add(parameter.id());
                    }
                    if (quantity.value() != value) {
                      stale.add(one.rule() + " " + parameter.id());
                    }
                  });
        }
      }
    }
    assertThat(stale, is(empty()));
    // that everything named was heard, most of it in what is told of a season
    assertThat(told, is(tellers.keySet()));
    assertThat(inCases.size(), is(greaterThan(50)));
  }

  /** A number in digits, or one in words with its unit. */
  private static final Pattern NUMBER =
      Pattern.compile(
          "(?i)(?<![\\w.,-])(\\d+(?:[.,]\\d+)*|(?:half|two|three|four|five|six|seven|eight|nine|ten"
              + "|eleven|twelve|fourteen|twenty)(?= (?:more )?(?:hour|day|week|month|year|ng|mL|kg)))"
              + "\\b(?!\\.\\d)");

  /** Numbers beside a parameter of the same value that are something else, and what. */
  private static final String OTHERS = "numbers-of-others.csv";

  /** How a number may be told, in digits or words. */
  private static Set<String> ways(double value) {
    Set<String> ways = new TreeSet<>();
    for (List<String> forms :
        List.of(
            List.<String>of(),
            List.of("million"),
            List.of("percent"),
            List.of("rest", "percent"),
            List.of("days"),
            List.of("weeks"),
            List.of("minutes"),
            List.of("weeks-of-days"),
            List.of("months-of-days"),
            List.of("round-months"),
            List.of("hours-of-days"),
            List.of("nmol", "tenths"),
            List.of("years-of-days"),
            List.of("years-of-months"),
            List.of("negative"))) {
      ways.add(written(value, forms));
      List<String> words = new ArrayList<>(forms);
      words.add("words");
      ways.add(written(value, words));
    }
    return ways;
  }

  private static String written(double value, List<String> forms) {
    String place = forms.stream().map(form -> ":" + form).collect(Collectors.joining("", "{", "}"));
    return Sentence.of(place, value).toString();
  }

  @Test
  void noNumberStandsInWordsThatIsAParameterOfTheirRule() {
    Map<String, Set<String>> tellers = tellers();
    Map<String, RuleCard> cards =
        RULES.cards().stream().collect(Collectors.toMap(RuleCard::id, Function.identity()));
    Set<String> standing = new TreeSet<>();
    for (Parameter parameter : RULES.parameters().all()) {
      Set<String> ways = ways(parameter.value());
      for (Heard one :
          heard(RULES, parameter.id(), tellers.getOrDefault(parameter.id(), Set.of()))) {
        if (one.sentence().equals(Objects.requireNonNull(cards.get(one.rule())).told().why())) {
          continue; // what a source found stays what it found
        }
        literals(one.sentence())
            .flatMap(words -> NUMBER.matcher(words).results())
            .map(MatchResult::group)
            .filter(number -> ways.contains(number.toLowerCase(Locale.ROOT)))
            .forEach(number -> standing.add(one.rule() + "," + number + "," + parameter.id()));
      }
    }
    assertThat(standing, is(ToldNumbersTest.listed(OTHERS, 3)));
  }

  private static Stream<String> literals(Sentence sentence) {
    return Stream.concat(
        Template.of(sentence.template()).words().stream(),
        sentence.parts().stream()
            .filter(Part.Inner.class::isInstance)
            .flatMap(part -> literals(((Part.Inner) part).sentence())));
  }
}
