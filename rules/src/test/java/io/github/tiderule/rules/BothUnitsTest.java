package io.github.tiderule.rules;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.conclusion.reading.Accepted;
import io.github.tiderule.rules.conclusion.reading.Discounted;
import io.github.tiderule.rules.conclusion.reading.Held;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.assay.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** What is asked of a value, a limit or a band is asked of it in either unit. */
class BothUnitsTest {

  private static final RuleBase RULES = RuleBase.load();
  private static final double MOST = 10_000;

  /** From nothing to the most that may be typed, each a good part above the one before. */
  private static List<Double> values() {
    List<Double> values = new ArrayList<>(List.of(0.0, Double.MIN_VALUE, 1e-300, 1e-9));
    DoubleStream.iterate(0.011, value -> value < MOST / 3.18, value -> value * 1.37)
        .forEach(values::add);
    values.add(MOST / 3.18);
    return values;
  }

  private static String written(double ngPerMl, Unit unit) {
    return unit.fromNgPerMl(ngPerMl) + " " + unit.word();
  }

  /** What became of the observation that is looked at: used or not, and whether it is asked for. */
  private static String verdict(String facts, String about) {
    StageResult result = RULES.run(Stage.READING, FactLine.facts(facts));
    boolean held = result.all(Held.class).stream().anyMatch(one -> one.observation().equals(about));
    boolean used =
        result.all(Accepted.class).stream().anyMatch(one -> one.observation().equals(about));
    boolean doubted =
        !held
            && result.all(Discounted.class).stream()
                .anyMatch(one -> one.observation().equals(about));
    boolean asked = result.all(Question.class).stream().anyMatch(one -> one.about().equals(about));
    return "held " + held + ", used " + used + ", doubted " + doubted + ", asked " + asked;
  }

  /**
   * @param before facts before it, in which {@code U0.5} stands for a value of 0.5 ng/mL
   * @param after what follows number and unit
   */
  private static List<String> unlike(String before, String kind, String after) {
    List<String> unlike = new ArrayList<>();
    for (double value : values()) {
      List<String> verdicts = new ArrayList<>();
      for (Unit unit : Unit.values()) {
        String facts = facts(before, unit) + kind + written(value, unit) + after;
        verdicts.add(verdict(facts, "x"));
      }
      if (verdicts.stream().distinct().count() > 1) {
        unlike.add(value + " ng/mL after '" + before + "'" + after + ": " + verdicts);
      }
    }
    return unlike;
  }

  private static String facts(String before, Unit unit) {
    StringBuilder facts = new StringBuilder();
    for (String word : before.split(" ", -1)) {
      facts.append(
          word.startsWith("U") ? written(Double.parseDouble(word.substring(1)), unit) : word);
      facts.append(' ');
    }
    return facts.toString();
  }

  @Test
  void aFirstValueIsAskedAboutAlike() {
    for (String limit : List.of("", " limit=below", " limit=above")) {
      assertThat(unlike("", "p x 3 ", limit), is(empty()));
      assertThat(unlike("", "p x 9 ", limit), is(empty()));
    }
  }

  @Test
  void aHigherValueIsAskedAboutAlike() {
    List<String> all = new ArrayList<>();
    for (String lab : List.of("", " lab=B")) {
      for (double first : List.of(0.3, 0.9, 2.2, 6.0)) {
        for (String day : List.of("8", "7", "6")) {
          unlike("p a " + day + " U" + first + " ;", "p x 9 ", lab).stream()
              .filter(line -> Double.parseDouble(line.split(" ", 2)[0]) > first)
              .forEach(all::add);
        }
      }
    }
    assertThat(all, is(empty()));
  }

  @Test
  void aBandIsAskedAboutAlike() {
    List<String> unlike = new ArrayList<>();
    for (double value : values()) {
      for (String day : List.of("3", "9")) {
        List<String> open = new ArrayList<>();
        List<String> lowest = new ArrayList<>();
        for (Unit unit : Unit.values()) {
          String number = Double.toString(unit.fromNgPerMl(value));
          open.add(verdict("band x " + day + " " + number + " - " + unit.word(), "x"));
          lowest.add(verdict("band x " + day + " - " + number + " " + unit.word(), "x"));
        }
        if (open.stream().distinct().count() > 1 || lowest.stream().distinct().count() > 1) {
          unlike.add(value + " ng/mL: " + open + lowest);
        }
      }
    }
    assertThat(unlike, is(empty()));
  }

  @Test
  void whatNoBitchReachesIsNeverUsed() {
    List<String> used = new ArrayList<>();
    for (double value : values()) {
      for (Unit unit : Unit.values()) {
        for (String limit : List.of("", " limit=below", " limit=above")) {
          String verdict = verdict("p x 9 " + written(value, unit) + limit, "x");
          boolean possible = value == 0 || (value >= 0.02 && value <= 100);
          if (!possible && !verdict.equals("held true, used false, doubted false, asked true")) {
            used.add(written(value, unit) + limit + ": " + verdict);
          }
        }
      }
    }
    assertThat(used, is(empty()));
  }
}
