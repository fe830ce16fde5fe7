package io.github.tiderule.cases.property;

import static io.github.tiderule.cases.property.PropertiesTest.unless;
import static io.github.tiderule.cases.property.Property.advise;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.cases.corpus.UnitWords;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Ovulation;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** What changes nothing, or shifts an answer and nothing else. */
class InvarianceTest {

  private static final double NMOL_PER_NG = 3.18;

  @Test
  void orderChangesNothing() {
    Property.holds(
        cycle -> {
          ObjectNode shuffled = cycle.deepCopy();
          List<JsonNode> observations = new ArrayList<>();
          cycle.get("observations").forEach(observations::add);
          Collections.shuffle(observations, new Random(observations.size()));
          ((ArrayNode) shuffled.get("observations")).removeAll().addAll(observations);
          return unless(advise(cycle).equals(advise(shuffled)), "another answer after shuffling");
        });
  }

  @Test
  void unitChangesNothing() {
    Property.holds(
        cycle -> {
          ObjectNode molar = cycle.deepCopy();
          for (JsonNode one : molar.get("observations")) {
            if (one.path("unit").asText().equals("ng/mL") && one.has("value")) {
              double nmol = one.get("value").asDouble() * NMOL_PER_NG;
              ((ObjectNode) one).put("value", Math.round(nmol * 1e6) / 1e6);
              ((ObjectNode) one).put("unit", "nmol/L");
            }
          }
          return unless(
              UnitWords.without(advise(cycle)).equals(UnitWords.without(advise(molar))),
              "another answer in the other unit");
        });
  }

  /** Clinics and couriers keep weekdays, so the whole answer moves by whole weeks only. */
  @Test
  void aShiftOfEverythingByWholeWeeksShiftsTheAnswer() {
    Property.holds(cycle -> shiftedAlike(cycle, 14, dates -> dates));
  }

  @Test
  void aShiftOfEverythingByWholeDaysShiftsOvulation() {
    Property.holds(
        cycle ->
            shiftedAlike(
                cycle,
                11,
                dates -> {
                  Map<String, String> kept = new TreeMap<>(dates);
                  kept.keySet().retainAll(Set.of("median", "p05", "p95"));
                  return kept;
                }));
  }

  private static Optional<String> shiftedAlike(
      ObjectNode cycle, int days, UnaryOperator<Map<String, String>> what) {
    Map<String, String> before = what.apply(dates(advise(cycle), days));
    Map<String, String> after = what.apply(dates(advise(shifted(cycle, days)), 0));
    return unless(
        before.equals(after), "shifted by " + days + " days: " + before + " became " + after);
  }

  private static ObjectNode shifted(ObjectNode cycle, int days) {
    ObjectNode moved = cycle.deepCopy();
    later(moved, "asOf", days);
    moved.get("observations").forEach(one -> later((ObjectNode) one, "at", days));
    move((ObjectNode) moved.get("firstBlood"), "on", days);
    move((ObjectNode) moved.get("female"), "bornOn", days);
    return moved;
  }

  private static void later(ObjectNode node, String field, int days) {
    OffsetDateTime at = OffsetDateTime.parse(node.get(field).asText());
    node.put(field, at.plusDays(days).toInstant().toString());
  }

  private static void move(ObjectNode node, String field, int days) {
    if (node.has(field)) {
      node.put(field, LocalDate.parse(node.get(field).asText()).plusDays(days).toString());
    }
  }

  /** What an answer says in dates, some days on. */
  private static Map<String, String> dates(Advice advice, int days) {
    Map<String, String> dates = new TreeMap<>();
    dates.put("action", advice.action().now().word());
    Ovulation ovulation = advice.timing().ovulation();
    if (ovulation != null) {
      dates.put("median", ovulation.median().plusDays(days).toString());
      dates.put("p05", ovulation.p05().plusDays(days).toString());
      dates.put("p95", ovulation.p95().plusDays(days).toString());
    }
    if (advice.breeding().plan() != null) {
      dates.put(
          "plan",
          advice.breeding().plan().at().stream().map(at -> at.plusDays(days)).toList().toString());
    }
    if (advice.testing().next() != null) {
      dates.put("test", advice.testing().next().at().plusDays(days).toString());
    }
    advice
        .breeding()
        .days()
        .forEach(
            day ->
                dates.put(
                    day.day().plusDays(days).toString(), day.rank() + " " + day.verdict().word()));
    return dates;
  }
}
