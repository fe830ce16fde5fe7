package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.engine.advice.course.Whelping;
import io.github.tiderule.rules.conclusion.TestKind;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** What is expected of ovulation, LH peak, whelping and the next test. */
final class ExpectedTimes {

  private static final double HOURS_PER_DAY = 24;

  private ExpectedTimes() {}

  static Map<String, Expecting> keys() {
    return Map.of(
        "ovulation", ExpectedTimes::ovulation,
        "lhPeak", ExpectedTimes::peak,
        "whelping", ExpectedTimes::whelping,
        "nextTest", ExpectedTimes::nextTest);
  }

  private static void ovulation(
      JsonNode expected, Outcome.Advised answer, Differences differences) {
    Ovulation ovulation = answer.advice().timing().ovulation();
    if (absence(expected, ovulation, differences) || ovulation == null) {
      return;
    }
    ZoneId zone = answer.cycle().zone();
    differences.each(
        expected,
        answer,
        Map.of(
            "median", (node, a, d) -> Bounds.time(node, ovulation.median(), zone, d),
            "p05", (node, a, d) -> Bounds.time(node, ovulation.p05(), zone, d),
            "p95", (node, a, d) -> Bounds.time(node, ovulation.p95(), zone, d),
            "holds", (node, a, d) -> holds(node, ovulation.p05(), ovulation.p95(), zone, d),
            "widthDays",
                (node, a, d) -> Bounds.number(node, days(ovulation.p05(), ovulation.p95()), d),
            "confirmed",
                (node, a, d) ->
                    d.require(
                        ovulation.confirmed() == node.asBoolean(),
                        node.asText(),
                        ovulation.confirmed()),
            "noOvulation",
                (node, a, d) -> Bounds.number(node, ovulation.noOvulationProbability(), d),
            "plateau", (node, a, d) -> Bounds.number(node, ovulation.patterns().plateau(), d)));
  }

  private static void peak(JsonNode expected, Outcome.Advised answer, Differences differences) {
    Quantiles peak = answer.advice().timing().lhPeak();
    if (absence(expected, peak, differences) || peak == null) {
      return;
    }
    ZoneId zone = answer.cycle().zone();
    differences.each(
        expected,
        answer,
        Map.of(
            "median", (node, a, d) -> Bounds.time(node, peak.median(), zone, d),
            "holds", (node, a, d) -> holds(node, peak.p05(), peak.p95(), zone, d)));
  }

  private static void whelping(JsonNode expected, Outcome.Advised answer, Differences differences) {
    Whelping whelping = answer.advice().course().whelping();
    if (absence(expected, whelping, differences) || whelping == null) {
      return;
    }
    ZoneId zone = answer.cycle().zone();
    differences.each(
        expected,
        answer,
        Map.of(
            "median", (node, a, d) -> Bounds.time(node, whelping.median(), zone, d),
            "holds", (node, a, d) -> holds(node, whelping.p05(), whelping.p95(), zone, d),
            "widthDays",
                (node, a, d) -> Bounds.number(node, days(whelping.p05(), whelping.p95()), d)));
  }

  private static void nextTest(JsonNode expected, Outcome.Advised answer, Differences differences) {
    NextTest test = answer.advice().testing().next();
    if (absence(expected, test, differences) || test == null) {
      return;
    }
    ZoneId zone = answer.cycle().zone();
    differences.each(
        expected,
        answer,
        Map.of(
            "kind",
                (node, a, d) ->
                    d.require(
                        Bounds.words(node).contains(test.kind().word()),
                        node.toString(),
                        test.kind().word()),
            "at", (node, a, d) -> Bounds.time(node, test.at(), zone, d),
            "also",
                (node, a, d) ->
                    d.require(
                        Bounds.words(node)
                            .equals(test.also().stream().map(TestKind::word).toList()),
                        node.toString(),
                        test.also().toString()),
            "gain", (node, a, d) -> Bounds.number(node, test.gain(), d)));
  }

  /** Whether {@code none} was expected, or something was and nothing is there. */
  static boolean absence(JsonNode expected, @Nullable Object actual, Differences differences) {
    if (Bounds.none(expected)) {
      differences.require(actual == null, "none", actual);
      return true;
    }
    if (actual == null) {
      differences.require(false, expected.toString(), null);
    }
    return false;
  }

  private static void holds(
      JsonNode at, OffsetDateTime p05, OffsetDateTime p95, ZoneId zone, Differences differences) {
    LocalDateTime wanted = Bounds.start(at);
    Function<OffsetDateTime, LocalDateTime> local = time -> Bounds.local(time, zone);
    differences.require(
        !wanted.isBefore(local.apply(p05)) && !wanted.isAfter(local.apply(p95)),
        "the 5 to 95 % interval holds " + wanted,
        Objects.toString(local.apply(p05)) + " to " + local.apply(p95));
  }

  static double days(OffsetDateTime from, OffsetDateTime to) {
    return Duration.between(from, to).toMinutes() / 60.0 / HOURS_PER_DAY;
  }
}
