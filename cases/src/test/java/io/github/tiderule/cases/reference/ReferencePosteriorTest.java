package io.github.tiderule.cases.reference;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Patterns;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.rules.fact.Hours;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The engine beside the same model written a second time: see {@code cases/reference/README.md}.
 */
class ReferencePosteriorTest {

  private static final Tiderule ENGINE = Tiderule.create();

  /** One hour, or one part in a hundred of the 90 % interval, whichever is more. */
  private static final double LEAST_HOURS = 1;

  private static final double SHARE_OF_WIDTH = 0.01;
  private static final double COURSE = 0.01;

  static List<ReferenceCase> cases() {
    return ReferenceCase.all();
  }

  @Test
  void everyCaseHasItsResult() {
    assertThat(cases().stream().map(ReferenceCase::name).toList(), equalTo(ReferenceCase.files()));
    assertThat(cases().size(), greaterThanOrEqualTo(25));
  }

  @Test
  void theReferenceItselfHasConverged() {
    for (ReferenceCase one : cases()) {
      double width = hours(one, "ovulation");
      double change = one.result().get("changeWithHalfTheGrid").get("ovulationHours").asDouble();
      assertThat(one.name(), change, lessThan(Math.max(LEAST_HOURS, SHARE_OF_WIDTH * width) / 2));
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void ovulationAgrees(ReferenceCase one) {
    Ovulation ovulation = Objects.requireNonNull(ENGINE.advise(one.cycle()).timing().ovulation());
    agrees(
        one,
        "ovulation",
        Map.of(
            "p05", ovulation.p05(),
            "p25", ovulation.p25(),
            "p50", ovulation.median(),
            "p75", ovulation.p75(),
            "p95", ovulation.p95()));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void lhPeakAgrees(ReferenceCase one) {
    Quantiles peak = Objects.requireNonNull(ENGINE.advise(one.cycle()).timing().lhPeak());
    agrees(
        one,
        "lhPeak",
        Map.of(
            "p05", peak.p05(),
            "p25", peak.p25(),
            "p50", peak.median(),
            "p75", peak.p75(),
            "p95", peak.p95()));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void coursesAgree(ReferenceCase one) {
    Advice advice = ENGINE.advise(one.cycle());
    Ovulation ovulation = Objects.requireNonNull(advice.timing().ovulation());
    Patterns courses = ovulation.patterns();
    double parts = one.course("irregular") + one.course("failing");
    assertThat(courses.ordinary(), closeTo(one.course("ordinary") + parts, COURSE));
    assertThat(courses.plateau(), closeTo(one.course("plateau"), COURSE));
    double without = one.course("brokenOff") + one.course("silent");
    assertThat(courses.noOvulation(), closeTo(without, COURSE));
    assertThat(courses.irregular(), closeTo(one.course("irregular"), COURSE));
    assertThat(courses.failing(), closeTo(one.course("failing"), COURSE));
    assertThat(courses.brokenOff(), closeTo(one.course("brokenOff"), COURSE));
    assertThat(ovulation.fit(), closeTo(one.result().get("fit").asDouble(), COURSE));
  }

  /** A value the rules hold back or set aside would be compared with one the reference uses. */
  @ParameterizedTest
  @MethodSource("cases")
  void theEngineUsesWhatTheReferenceUses(ReferenceCase one) {
    long dating =
        one.cycle().observations().stream()
            .filter(o -> !(o instanceof Sign sign && sign.sign() == SignKind.BLEEDING_STOPS))
            .count();
    assertThat(ENGINE.advise(one.cycle()).reasoning().influence(), hasSize((int) dating));
  }

  private static void agrees(
      ReferenceCase one, String what, Map<String, OffsetDateTime> quantiles) {
    double allowed = Math.max(LEAST_HOURS, SHARE_OF_WIDTH * hours(one, what));
    quantiles.forEach(
        (share, at) ->
            assertThat(
                one.name() + " " + what + " " + share,
                Hours.between(one.quantile(what, share), at.toInstant()),
                closeTo(0, allowed)));
  }

  private static double hours(ReferenceCase one, String what) {
    return Hours.between(one.quantile(what, "p05"), one.quantile(what, "p95"));
  }
}
