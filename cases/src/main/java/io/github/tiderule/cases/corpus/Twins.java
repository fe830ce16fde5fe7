package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Ovulation;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Holds an answer against that of a case that differs from it in one thing.
 *
 * <p>{@code same: answer}: everything is equal but the words that a unit was converted. {@code
 * same: dates}: ovulation, action, plan and verdicts are equal in local time, {@code shiftDays}
 * later. {@code medianMovesHours}: how far the median of ovulation has moved. {@code sharesWithin}:
 * how far the egg shares of a day may differ. {@code width}: whether the interval is narrower,
 * wider or neither.
 */
final class Twins {

  private static final int MINUTES_PER_HOUR = 60;

  private static final String OVULATION = "ovulation";

  private Twins() {}

  static void check(
      JsonNode expected, Outcome.Advised elder, Outcome.Advised younger, Differences differences) {
    long shift = expected.path("shiftDays").asLong(0);
    differences.each(
        expected,
        younger,
        Map.of(
            "of", (node, a, d) -> {},
            "shiftDays", (node, a, d) -> {},
            "same", (node, a, d) -> same(node.asText(), elder, younger, shift, d),
            "medianMovesHours",
                (node, a, d) -> moves(node, elder.advice(), younger.advice(), shift, d),
            "sharesWithin",
                (node, a, d) -> shares(node.asDouble(), elder.advice(), younger.advice(), shift, d),
            "width", (node, a, d) -> width(node.asText(), elder.advice(), younger.advice(), d)));
  }

  private static void same(
      String what,
      Outcome.Advised elder,
      Outcome.Advised younger,
      long shift,
      Differences differences) {
    if (what.equals("answer")) {
      differences.require(
          UnitWords.without(elder.advice()).equals(UnitWords.without(younger.advice())),
          "the twin's answer",
          firstUnequal(dates(elder, shift), dates(younger, 0)));
      return;
    }
    Map<String, String> wanted = new TreeMap<>(dates(elder, shift));
    Map<String, String> actual = new TreeMap<>(dates(younger, 0));
    if (nearly(elder, younger, shift)) {
      wanted.remove(OVULATION);
      actual.remove(OVULATION);
    }
    differences.require(wanted.equals(actual), "the twin's dates", firstUnequal(wanted, actual));
  }

  /** Whether ovulation is the same to a minute: cut to minutes, equal moments can differ by one. */
  private static boolean nearly(Outcome.Advised elder, Outcome.Advised younger, long shift) {
    Ovulation from = elder.advice().timing().ovulation();
    Ovulation to = younger.advice().timing().ovulation();
    return from != null
        && to != null
        && Duration.between(
                    Bounds.local(from.median(), elder.cycle().zone()).plusDays(shift),
                    Bounds.local(to.median(), younger.cycle().zone()))
                .abs()
                .compareTo(Duration.ofMinutes(1))
            <= 0;
  }

  private static String firstUnequal(Map<String, String> wanted, Map<String, String> actual) {
    return wanted.entrySet().stream()
        .filter(entry -> !entry.getValue().equals(actual.get(entry.getKey())))
        .map(
            entry ->
                entry.getKey() + ": " + entry.getValue() + " became " + actual.get(entry.getKey()))
        .findFirst()
        .orElse("the same dates; something else differs");
  }

  /** What is said in dates, in local time. */
  private static Map<String, String> dates(Outcome.Advised answer, long shift) {
    Advice advice = answer.advice();
    ZoneId zone = answer.cycle().zone();
    Function<@Nullable OffsetDateTime, String> local = at -> local(at, zone, shift);
    Map<String, String> dates = new TreeMap<>();
    dates.put("action", advice.action().now().word());
    Ovulation ovulation = advice.timing().ovulation();
    dates.put(OVULATION, ovulation == null ? "none" : local.apply(ovulation.median()));
    Plan plan = advice.breeding().plan();
    dates.put("plan", plan == null ? "none" : times(plan.at(), local));
    dates.put(
        "next test",
        advice.testing().next() == null ? "none" : local.apply(advice.testing().next().at()));
    for (BreedingDay day : advice.breeding().days()) {
      dates.put("day " + day.day().plusDays(shift), day.verdict().word() + ", rank " + day.rank());
    }
    return dates;
  }

  private static String times(
      List<OffsetDateTime> at, Function<@Nullable OffsetDateTime, String> local) {
    return at.stream().map(local).toList().toString();
  }

  private static String local(@Nullable OffsetDateTime at, ZoneId zone, long shift) {
    if (at == null) {
      return "none";
    }
    LocalDateTime local = Bounds.local(at, zone).plusDays(shift);
    return local.withSecond(0).toString();
  }

  private static void moves(
      JsonNode bounds, Advice elder, Advice younger, long shift, Differences differences) {
    Ovulation from = elder.timing().ovulation();
    Ovulation to = younger.timing().ovulation();
    if (from == null || to == null) {
      differences.require(false, "two dates of ovulation", null);
      return;
    }
    Duration moved = Duration.between(from.median().plusDays(shift), to.median());
    Bounds.number(bounds, moved.toMinutes() / (double) MINUTES_PER_HOUR, differences);
  }

  private static void shares(
      double most, Advice elder, Advice younger, long shift, Differences differences) {
    for (BreedingDay day : elder.breeding().days()) {
      younger.breeding().days().stream()
          .filter(other -> other.day().equals(day.day().plusDays(shift)))
          .forEach(
              other ->
                  differences
                      .under(other.day().toString())
                      .require(
                          Math.abs(day.eggShare().mean() - other.eggShare().mean()) <= most
                              && Math.abs(day.eggShare().p10() - other.eggShare().p10()) <= most,
                          "within " + most + " of " + day.eggShare(),
                          other.eggShare()));
    }
  }

  private static void width(String wanted, Advice elder, Advice younger, Differences differences) {
    Ovulation from = elder.timing().ovulation();
    Ovulation to = younger.timing().ovulation();
    if (from == null || to == null) {
      differences.require(false, "two dates of ovulation", null);
      return;
    }
    double before = ExpectedTimes.days(from.p05(), from.p95());
    double after = ExpectedTimes.days(to.p05(), to.p95());
    boolean holds = wanted.equals("wider") ? after > before : after < before;
    differences.require(holds, wanted + " than " + before + " days", after + " days");
  }
}
