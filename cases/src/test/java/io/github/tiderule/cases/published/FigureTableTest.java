package io.github.tiderule.cases.published;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.cases.published.FigureTable.Measured;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.rules.source.Sources;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every published figure is reproduced, missed or untested, as its row says. A figure that is
 * missed stays in the table with the reason; one that begins to be reproduced, or ceases to be,
 * fails here.
 */
class FigureTableTest {

  private static final List<Figure> FIGURES = FigureTable.read(Path.of("published", "figures.csv"));
  private static final Measures MEASURES = Measures.of(Tiderule.create());

  @TestFactory
  Stream<DynamicTest> everyFigureIsAsItsRowSays() {
    return FigureTable.measure(FIGURES, MEASURES).stream()
        .map(one -> DynamicTest.dynamicTest(one.figure().id(), () -> check(one)));
  }

  private static void check(Measured one) {
    Figure figure = one.figure();
    assertThat(
        one.number() + " against " + figure.low() + " to " + figure.high(),
        one.status(),
        equalTo(figure.status()));
    assertThat(Sources.load().contains(figure.source()), is(true));
    if (figure.testable()) {
      assertThat(figure.low() <= figure.high(), is(true));
      assertThat(
          "the published number lies within its own span",
          figure.published() >= figure.low() && figure.published() <= figure.high(),
          is(true));
    } else {
      assertThat("why it cannot be tested", figure.note().length(), greaterThan(10));
    }
  }

  @Test
  void everyFigureHasItsOwnName() {
    assertThat(new HashSet<>(FIGURES.stream().map(Figure::id).toList()), hasSize(FIGURES.size()));
  }

  @Test
  void anUnknownMeasureIsAnError() {
    assertThrows(IllegalArgumentException.class, () -> MEASURES.of("guess", List.of()));
  }

  /** The median over bitches of all speeds, at two days a little above that of the usual speed. */
  @Test
  void theLevelIsReadOffTheCurve() {
    assertThat(MEASURES.of("level", List.of("ria", "2")), closeTo(5.1, 0.05));
  }
}
