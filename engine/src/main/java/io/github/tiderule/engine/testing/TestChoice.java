package io.github.tiderule.engine.testing;

import io.github.tiderule.engine.days.ScoredPlan;
import io.github.tiderule.engine.days.TestValue;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.testing.DrawTimes.Draw;
import io.github.tiderule.engine.timeline.ComingValue;
import io.github.tiderule.engine.timeline.Foresight;
import io.github.tiderule.engine.timeline.Outlook;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Which test to make next: the trade's floor, unless an earlier draw is worth clearly more, or no
 * result can change what is still to be decided.
 */
final class TestChoice {

  /** Edges between the progesterone results told apart, ng/mL on the scale of the series. */
  private static final double[] EDGES = {
    0.6, 0.9, 1.2, 1.6, 2.0, 2.5, 3.2, 4.0, 5.0, 6.3, 8.0, 10, 13, 17, 24
  };

  private final Tools tools;
  private final Clock clock;
  private final TimeAxis axis;
  private final Foresight foresight;
  private final Series series;
  private final TestValue value;
  private final boolean lhOnSameBlood;
  private final Map<Draw, ComingValue> coming = new HashMap<>();
  private final Map<Draw, Valued> valued = new HashMap<>();
  private final List<Valued> inOrder = new ArrayList<>();

  /**
   * @param series the series the next value should belong to
   * @param plan the best set of doses
   */
  TestChoice(
      Season season,
      Foresight foresight,
      Series series,
      Breeding breeding,
      ScoredPlan plan,
      boolean lhOnSameBlood) {
    this.tools = season.tools();
    this.clock = season.clock();
    this.axis = season.axis();
    this.foresight = foresight;
    this.series = series;
    this.lhOnSameBlood = lhOnSameBlood;
    value = TestValue.of(breeding.table(), breeding.search(), plan);
  }

  /**
   * A draw and what its result could bring.
   *
   * @param withLh whether its blood is worth testing for LH too
   */
  record Valued(Draw draw, TestValue.Outcome outcome, boolean withLh) {

    double gain() {
      return outcome.gain();
    }
  }

  /**
   * What to test.
   *
   * @param test absent where no test is worth making
   * @param asTheTradeHasIt whether it is the draw the trade asks for
   */
  record Chosen(@Nullable Valued test, boolean asTheTradeHasIt) {}

  /** The value of a progesterone draw, as it is foreseen. */
  ComingValue coming(Draw draw) {
    return coming.computeIfAbsent(
        draw,
        d ->
            lhOnSameBlood
                ? foresight.valueWithLh(series, axis.day(d.at()))
                : foresight.value(series, axis.day(d.at())));
  }

  private Valued value(Draw draw) {
    Valued known = valued.get(draw);
    if (known == null) {
      double day = axis.day(draw.at());
      Outlook outlook =
          switch (draw.kind()) {
            case PROGESTERONE -> coming(draw).between(EDGES);
            case LH -> foresight.lh(day);
            case CYTOLOGY -> foresight.smear(day);
          };
      known = withLh(new Valued(draw, value.outcome(outlook, draw.result()), false));
      valued.put(draw, known);
      inOrder.add(known);
    }
    return known;
  }

  /** The same draw tested for LH too, where rules allow that and it is worth it. */
  private Valued withLh(Valued alone) {
    Draw draw = alone.draw();
    if (!lhOnSameBlood || draw.kind() != TestKind.PROGESTERONE) {
      return alone;
    }
    TestValue.Outcome both = value.outcome(coming(draw).betweenWithLh(EDGES), draw.result());
    return both.gain() - alone.gain() >= tools.value("planning.test-worth")
        ? new Valued(draw, both, true)
        : alone;
  }

  /** The progesterone draw whose result is there first, and what it could bring. */
  Optional<Valued> soonest(DrawTimes times, @Nullable Draw floor) {
    List<Draw> draws = new ArrayList<>(times.ahead(TestKind.PROGESTERONE));
    if (floor != null && floor.kind() == TestKind.PROGESTERONE) {
      draws.add(floor);
    }
    return draws.stream().min(Comparator.comparing(Draw::result)).map(this::value);
  }

  /** The draw that is asked for, whatever it is worth. */
  Chosen asked(Draw draw) {
    return new Chosen(value(draw), true);
  }

  /**
   * Chooses.
   *
   * @param floor what the trade asks for, if anything
   * @param done kinds of test that rules have ended
   * @param must whether the trade's draw is made even if it can change nothing
   */
  Chosen choose(DrawTimes times, @Nullable Draw floor, Set<TestKind> done, boolean must) {
    Optional<Valued> best = best(times, done);
    if (floor != null) {
      Valued asked = value(floor);
      // a smear dates whelping too, whatever becomes of the plan
      if (asked.outcome().canChange() || must || floor.kind() == TestKind.CYTOLOGY) {
        double enough = asked.gain() + tools.value("planning.test-sooner");
        return best.filter(one -> one.draw().at().isBefore(floor.at()))
            .filter(one -> one.gain() >= enough)
            .map(one -> new Chosen(one, false))
            .orElse(new Chosen(asked, true));
      }
    }
    return new Chosen(
        best.filter(one -> one.gain() >= tools.value("planning.test-worth")).orElse(null), false);
  }

  /** The draw worth most, the earliest of equals; progesterone unless another is clearly better. */
  private Optional<Valued> best(DrawTimes times, Set<TestKind> done) {
    Optional<Valued> best = Optional.empty();
    for (TestKind kind : TestKind.values()) {
      if (done.contains(kind)) {
        continue;
      }
      double bar = best.map(one -> one.gain() + tools.value("planning.test-sooner")).orElse(-1.0);
      Optional<Valued> ofKind =
          times.ahead(kind).stream()
              .filter(draw -> value.most(draw.result()) >= tools.value("planning.test-worth"))
              .map(this::value)
              .max(
                  Comparator.comparingDouble(Valued::gain)
                      .thenComparing(one -> one.draw().at(), Comparator.reverseOrder()));
      if (ofKind.isPresent() && ofKind.get().gain() > bar) {
        best = ofKind;
      }
    }
    return best;
  }

  /** What each draw is worth, in the order they were looked at. */
  List<Sentence> sentences() {
    return inOrder.stream()
        .map(
            one ->
                Sentence.of(
                    (one.withLh() ? "{} with LH on {}" : "{} on {}")
                        + ", known {}, is worth {} in 100 eggs",
                    Sentence.of(name(one.draw().kind())),
                    clock.dayAndTime(one.draw().at()),
                    clock.dayAndTime(one.draw().result()),
                    Part.figure(Math.round(1000 * one.gain()) / 10.0)))
        .toList();
  }

  /** The kind of test in words that begin a sentence. */
  static String name(TestKind kind) {
    return switch (kind) {
      case PROGESTERONE -> "progesterone";
      case LH -> "an LH test";
      case CYTOLOGY -> "a smear";
    };
  }

  /** Whether to act on the forecast: for an only dose it has to win something over waiting. */
  static boolean acts(Season season, TestValue.Outcome outcome) {
    boolean only = season.semenPlan().onlyDose();
    return outcome.actRather(only ? season.tools().value("planning.forecast-gain") : 0);
  }
}
