package io.github.tiderule.engine;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is drawn of an estimate against the estimate itself. */
class PosteriorTest {

  private static final Tiderule TIDERULE = Tiderule.create();
  private static final Instant FIRST = Instant.parse("2027-03-01T08:00:00Z");
  private static final Series SERIES = Series.of("A", Method.CLIA);

  private static CycleRecord season(double... values) {
    List<Observation> drawn = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      drawn.add(
          Progesterone.of(values[i], Unit.NG_PER_ML)
              .drawn(at(2 * i))
              .withId("p" + i)
              .method(Method.CLIA)
              .laboratory("A"));
    }
    return CycleRecord.on(at(2 * values.length - 1), ZoneId.of("UTC"))
        .firstBlood(FirstBlood.seen(LocalDate.of(2027, 2, 23)))
        .addAll(drawn)
        .build();
  }

  private static Instant at(double days) {
    return FIRST.plus(Duration.ofMinutes(Math.round(days * 1440)));
  }

  private static double days(Instant from, Instant to) {
    return Duration.between(from, to).toMinutes() / 1440.0;
  }

  @Test
  void densitiesHoldAllOfTheProbabilityAndTheMedianOfTheAdvice() {
    Reasoning reasoning = TIDERULE.reason(season(0.6, 0.9, 2.2, 5.1));
    Ovulation told = Objects.requireNonNull(reasoning.advice().timing().ovulation());
    List<Posterior.Likely> ovulation = reasoning.posterior().orElseThrow().ovulation();
    double sum = 0;
    double before = 0;
    for (int i = 1; i < ovulation.size(); i++) {
      Posterior.Likely one = ovulation.get(i);
      double part = one.perDay() * days(ovulation.get(i - 1).at(), one.at());
      sum += part;
      before += one.at().isAfter(told.median().toInstant()) ? 0 : part;
    }
    assertThat(sum, closeTo(1, 0.01));
    assertThat(before, closeTo(0.5, 0.08));
  }

  @Test
  void theCourseRisesThroughTheValuesAndWidensBeyondThem() {
    Reasoning reasoning = TIDERULE.reason(season(0.6, 0.9, 2.2, 5.1));
    List<Posterior.Expected> course =
        reasoning
            .posterior()
            .orElseThrow()
            .course(SERIES, List.of(at(2), at(4), at(6), at(8), at(10)));
    for (int i = 0; i < course.size(); i++) {
      Posterior.Expected one = course.get(i);
      assertThat(one.low(), lessThan(one.median()));
      assertThat(one.median(), lessThan(one.high()));
      if (i > 0) {
        assertThat(one.median(), greaterThan(course.get(i - 1).median()));
      }
    }
    assertThat(Math.log(course.get(1).median() / 2.2), closeTo(0, 0.25));
    assertThat(width(course.get(4)), greaterThan(width(course.get(2))));
  }

  private static double width(Posterior.Expected one) {
    return Math.log(one.high() / one.low());
  }

  @Test
  void aMethodThatReadsHigherHasAHigherCourse() {
    Posterior posterior = TIDERULE.reason(season(0.6, 0.9, 2.2, 5.1)).posterior().orElseThrow();
    List<Instant> when = List.of(at(5));
    double same = posterior.course(SERIES, when).get(0).high();
    double other = posterior.course(Series.of("B", Method.UNKNOWN), when).get(0).high();
    assertThat(other, greaterThan(same));
  }

  @Test
  void askedTwiceItSaysTheSame() {
    CycleRecord cycle = season(0.6, 0.9, 2.2);
    List<Instant> when = List.of(at(3), at(1));
    assertThat(
        TIDERULE.reason(cycle).posterior().orElseThrow().course(SERIES, when),
        equalTo(TIDERULE.reason(cycle).posterior().orElseThrow().course(SERIES, when)));
  }

  @Test
  void whereNothingIsKnownNothingIsDrawn() {
    CycleRecord blank =
        CycleRecord.on(FIRST, ZoneId.of("UTC")).firstBlood(FirstBlood.unknown()).build();
    assertThat(TIDERULE.reason(blank).posterior(), is(Optional.empty()));
  }

  @Test
  void itTellsAProgesteroneCourseFromBloodAlone() {
    assertThat(
        TIDERULE.reason(season()).posterior().orElseThrow().restsOnProgesterone(), is(false));
    assertThat(
        TIDERULE.reason(season(1)).posterior().orElseThrow().restsOnProgesterone(), is(true));
  }
}
