package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** What is expected to be done: the action, the days and the plan. */
final class ExpectedDays {

  private ExpectedDays() {}

  static Map<String, Expecting> keys() {
    return Map.of(
        "action", ExpectedDays::action,
        "days", ExpectedDays::days,
        "anyRecommended", ExpectedDays::anyRecommended,
        "best", ExpectedDays::best,
        "plan", ExpectedDays::plan);
  }

  private static void action(JsonNode expected, Outcome.Advised answer, Differences differences) {
    String now = answer.advice().action().now().word();
    differences.require(
        Bounds.words(expected).contains(now),
        expected.toString(),
        now + ": " + answer.advice().action().headline());
  }

  private static void days(JsonNode expected, Outcome.Advised answer, Differences differences) {
    List<BreedingDay> days = answer.advice().breeding().days();
    if (Bounds.none(expected)) {
      differences.require(days.isEmpty(), "none", days.size() + " days");
      return;
    }
    expected
        .properties()
        .forEach(
            entry -> {
              LocalDate day = LocalDate.parse(entry.getKey());
              String verdict =
                  days.stream()
                      .filter(one -> one.day().equals(day))
                      .map(one -> one.verdict().word())
                      .findFirst()
                      .orElse("unlisted");
              differences
                  .under(entry.getKey())
                  .require(
                      Bounds.words(entry.getValue()).contains(verdict),
                      entry.getValue().toString(),
                      verdict);
            });
  }

  private static void anyRecommended(
      JsonNode expected, Outcome.Advised answer, Differences differences) {
    List<LocalDate> recommended =
        answer.advice().breeding().days().stream()
            .filter(day -> day.verdict().word().equals("recommended"))
            .map(BreedingDay::day)
            .toList();
    differences.require(
        expected.asBoolean() != recommended.isEmpty(), expected.asText(), recommended);
  }

  private static void best(JsonNode expected, Outcome.Advised answer, Differences differences) {
    Optional<OffsetDateTime> best =
        answer.advice().breeding().days().stream().findFirst().map(BreedingDay::from);
    Bounds.time(expected, best.orElse(null), answer.cycle().zone(), differences);
  }

  private static void plan(JsonNode expected, Outcome.Advised answer, Differences differences) {
    Plan plan = answer.advice().breeding().plan();
    if (ExpectedTimes.absence(expected, plan, differences) || plan == null) {
      return;
    }
    ZoneId zone = answer.cycle().zone();
    OffsetDateTime first = plan.at().get(0);
    OffsetDateTime last = plan.at().get(plan.at().size() - 1);
    differences.each(
        expected,
        answer,
        Map.of(
            "first", (node, a, d) -> Bounds.time(node, first, zone, d),
            "last", (node, a, d) -> Bounds.time(node, last, zone, d),
            "doses",
                (node, a, d) ->
                    d.require(
                        Bounds.words(node).contains(Integer.toString(plan.at().size())),
                        node.toString(),
                        plan.at()),
            "orderBy",
                (node, a, d) -> {
                  if (!ExpectedTimes.absence(node, plan.orderBy(), d)) {
                    Bounds.time(node, plan.orderBy(), zone, d);
                  }
                },
            "eggShare", (node, a, d) -> Bounds.number(node, plan.eggShare().mean(), d),
            "alternatives", (node, a, d) -> Bounds.number(node, plan.alternatives().size(), d),
            "because",
                (node, a, d) ->
                    d.require(
                        plan.becauseOf().containsAll(Bounds.words(node)),
                        node.toString(),
                        Objects.toString(plan.becauseOf()))));
  }
}
