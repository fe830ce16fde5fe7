package io.github.tiderule.cases.property;

import static io.github.tiderule.cases.property.Property.advise;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.conclusion.Effect;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What holds for every season. */
class PropertiesTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Set<String> LINES =
      Set.of(
          "FND-003", "FND-004", "FND-005", "FND-010", "FND-011", "FND-020", "FND-021", "FND-022",
          "FND-023", "FND-030", "FND-031", "FND-032", "FND-033", "RDG-010", "RDG-011", "RDG-012");
  private static final Set<String> CLOSED = Set.of("DAY-020", "DAY-023", "DAY-024");

  @Test
  void noLineIsDrawnThroughTwoLaboratories() {
    Property.holds(
        cycle -> {
          Map<String, String> series = new HashMap<>();
          for (JsonNode one : cycle.get("observations")) {
            if (one.get("kind").asText().equals("progesterone")) {
              series.put(
                  one.get("id").asText(),
                  one.get("laboratory").asText() + " " + one.get("method").asText());
            }
          }
          return advise(cycle).reasoning().trace().stream()
              .filter(line -> LINES.contains(line.rule()))
              .filter(
                  line -> line.matched().stream().map(series::get).distinct().limit(2).count() > 1)
              .map(line -> line.rule() + " matched " + line.matched())
              .findFirst();
        });
  }

  /**
   * Where the onset is unknown and no value dates her, the support of the estimate is counted from
   * the moment of the advice, so that time alone moves it: such seasons are left out here.
   */
  @Test
  void timeWithoutNewsReopensNoClosedDay() {
    Property.holds(
        cycle -> {
          boolean dated =
              cycle.get("firstBlood").has("on")
                  || cycle.get("observations").findValuesAsText("unit").size() > 1;
          if (!dated) {
            return Optional.empty();
          }
          return reopened(cycle);
        });
  }

  /** A day closed now that is open some hours later, though nothing was observed. */
  static Optional<String> reopened(ObjectNode cycle) {
    Advice now = advise(cycle);
    Set<LocalDate> closed =
        now.breeding().days().stream()
            .filter(day -> day.reasons().stream().anyMatch(PropertiesTest::closes))
            .map(BreedingDay::day)
            .collect(Collectors.toSet());
    for (int hours : new int[] {12, 36, 72}) {
      ObjectNode later = cycle.deepCopy();
      later.put("asOf", now.asOf().plusHours(hours).toInstant().toString());
      for (BreedingDay day : advise(later).breeding().days()) {
        if (closed.contains(day.day()) && !day.verdict().word().equals("avoid")) {
          return Optional.of(day.day() + " is open again " + hours + " h later");
        }
      }
    }
    return Optional.empty();
  }

  private static boolean closes(Reason reason) {
    return CLOSED.contains(reason.rule()) && reason.effect() == Effect.VETOES;
  }

  @Test
  void aSeasonThatIsOverStaysOver() {
    Property.holds(
        cycle -> {
          Advice now = advise(cycle);
          if (!now.action().now().word().equals("passed")) {
            return Optional.empty();
          }
          ObjectNode later = cycle.deepCopy();
          later.put("asOf", now.asOf().plusHours(36).toInstant().toString());
          String then = advise(later).action().now().word();
          return unless(!Set.of("breed", "book").contains(then), "passed, and " + then + " later");
        });
  }

  @Test
  void refusalMakesNoDayBetterBeforeOvulation() {
    Property.holds(
        cycle -> {
          String route = cycle.path("breeding").path("route").asText("natural");
          if (!Set.of("natural", "vaginal").contains(route)) {
            return Optional.empty();
          }
          Advice without = advise(cycle);
          ObjectNode refusing = cycle.deepCopy();
          ((ArrayNode) refusing.get("observations"))
              .addObject()
              .put("id", "refusal")
              .put("kind", "sign")
              .put("at", without.asOf().minusMinutes(30).toInstant().toString())
              .put("sign", "refuses")
              .put("present", true);
          Advice with = advise(refusing);
          Ovulation ovulation = without.timing().ovulation();
          if (ovulation == null) {
            return Optional.empty();
          }
          LocalDate last = without.asOf().toLocalDate().plusDays(2);
          for (BreedingDay day : without.breeding().days()) {
            if (day.day().isAfter(last) || day.from().isAfter(ovulation.median())) {
              continue;
            }
            for (BreedingDay then : with.breeding().days()) {
              boolean better =
                  then.day().equals(day.day())
                      && (then.verdict().compareTo(day.verdict()) < 0 || then.rank() < day.rank());
              if (better) {
                return Optional.of(
                    day.day()
                        + ": "
                        + day.verdict()
                        + " of rank "
                        + day.rank()
                        + " became "
                        + then.verdict()
                        + " of rank "
                        + then.rank());
              }
            }
          }
          return Optional.empty();
        });
  }

  @Test
  void numbersAreLegal() {
    Property.holds(cycle -> Numbers.illegal(tree(advise(cycle))));
  }

  @Test
  void timesAreLegal() {
    Property.holds(
        cycle -> {
          Advice advice = advise(cycle);
          List<OffsetDateTime> ahead = new ArrayList<>();
          if (advice.breeding().plan() != null) {
            ahead.addAll(advice.breeding().plan().at());
            if (advice.breeding().plan().orderBy() != null) {
              ahead.add(advice.breeding().plan().orderBy());
            }
          }
          if (advice.testing().next() != null) {
            ahead.add(advice.testing().next().at());
          }
          ahead.add(advice.validUntil());
          advice.breeding().days().forEach(day -> ahead.add(day.to()));
          return ahead.stream()
              .filter(at -> at.isBefore(advice.asOf()))
              .map(at -> at + " lies before " + advice.asOf())
              .findFirst();
        });
  }

  @Test
  void everyReasonNamesARuleAndObservationsThatExist() {
    Set<String> rules =
        Property.ENGINE.rules().cards().stream().map(RuleCard::id).collect(Collectors.toSet());
    Set<String> sources = new HashSet<>();
    Property.ENGINE.rules().cards().forEach(card -> sources.addAll(card.sources()));
    Property.holds(
        cycle -> {
          Set<String> ids = new HashSet<>();
          cycle.get("observations").forEach(one -> ids.add(one.get("id").asText()));
          Set<String> named = new HashSet<>();
          Set<String> seen = new HashSet<>();
          Advice advice = advise(cycle);
          advice.reasoning().trace().forEach(line -> named.add(line.rule()));
          advice.reasoning().trace().forEach(line -> seen.addAll(line.matched()));
          advice.breeding().days().stream()
              .flatMap(day -> day.reasons().stream())
              .forEach(
                  reason -> {
                    named.add(reason.rule());
                    seen.addAll(reason.observations());
                  });
          advice.cautions().forEach(caution -> named.add(caution.rule()));
          named.addAll(advice.action().because());
          advice.reasoning().influence().forEach(one -> seen.add(one.observation()));
          advice.questions().forEach(one -> seen.add(one.about()));
          named.removeIf(rule -> rules.contains(rule) || rule.startsWith("EST-"));
          seen.removeAll(ids);
          return unless(
              named.isEmpty() && seen.isEmpty(), "no such rule or observation: " + named + seen);
        });
  }

  @Test
  void daysAreInOrderAndVetoesHold() {
    Property.holds(
        cycle -> {
          Advice advice = advise(cycle);
          int rank = 1;
          boolean surgical = cycle.path("breeding").path("route").asText().equals("surgical");
          for (BreedingDay day : advice.breeding().days()) {
            boolean vetoed =
                day.reasons().stream().anyMatch(reason -> reason.effect() == Effect.VETOES);
            String verdict = day.verdict().word();
            if (day.rank() != rank++
                || (vetoed && !verdict.equals("avoid"))
                || (surgical && verdict.equals("recommended"))) {
              return Optional.of(day.toString());
            }
          }
          return unless(
              advice.action().headline().toString().length() < 140,
              "too long: " + advice.action().headline().toString());
        });
  }

  @Test
  void noPlanBeginsOnADayToAvoid() {
    Property.holds(PropertiesTest::plannedOnADayToAvoid);
  }

  private static Optional<String> plannedOnADayToAvoid(ObjectNode cycle) {
    Advice advice = advise(cycle);
    if (!Set.of("breed", "book").contains(advice.action().now().word())
        || advice.breeding().plan() == null) {
      return Optional.empty();
    }
    LocalDate first = advice.breeding().plan().at().get(0).toLocalDate();
    return advice.breeding().days().stream()
        .filter(day -> day.day().equals(first) && day.verdict().word().equals("avoid"))
        .map(day -> advice.action().headline() + " But: " + day)
        .findFirst();
  }

  static Optional<String> unless(boolean holds, String otherwise) {
    return holds ? Optional.empty() : Optional.of(otherwise);
  }

  static String text(Advice advice) {
    return AdviceJson.text(advice, Layout.INDENTED);
  }

  private static JsonNode tree(Advice advice) {
    try {
      return JSON.readTree(text(advice));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
