package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Range;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads progesterone values and kit bands. */
final class ProgesteroneReader {

  private static final Range CONCENTRATION = Range.of(0, 10_000, "");
  private static final int MOST_HANDLING = 20;

  private ProgesteroneReader() {}

  static @Nullable Observation value(
      String id, @Nullable Instant at, Fields fields, Season season) {
    Field reportedField = fields.optional("reportedAt");
    Instant reportedAt = season.instant(reportedField);
    if (at != null && reportedAt != null && reportedAt.isBefore(at)) {
      reportedField.refuse(
          ProblemCode.WRONG_ORDER,
          "reportedAt ("
              + season.words(reportedAt)
              + ") is before the blood was drawn ("
              + season.words(at)
              + ")");
    }
    Field valueField = fields.required("value");
    Double value = valueField.number(CONCENTRATION);
    Comparator comparator = fields.optional("comparator").word(Comparator.class);
    if (comparator == Comparator.BELOW && value != null && value == 0) {
      valueField.refuse(
          ProblemCode.OUT_OF_RANGE,
          "value is 0 with the comparator \"<\"; nothing is below zero",
          "Maybe the limit of the reportable range was left out?");
    }
    Unit unit = unit(fields);
    Method method = fields.optional("method").word(Method.class);
    String laboratory = fields.optional("laboratory").text(Texts.NAME);
    Specimen specimen = fields.optional("specimen").word(Specimen.class);
    Tube tube = fields.optional("tube").word(Tube.class);
    List<Handling> handling = handling(fields.optional("handling"));
    String asReported = fields.optional("asReported").text(Texts.AS_REPORTED);
    if (value == null || at == null) {
      return null;
    }
    return new Progesterone(
        id,
        at,
        reportedAt,
        value,
        comparator,
        unit,
        method == null ? Method.UNKNOWN : method,
        laboratory,
        specimen,
        tube,
        handling,
        asReported);
  }

  static @Nullable Observation band(String id, Instant at, Fields fields) {
    Field lowField = fields.optional("low");
    Double low = lowField.number(CONCENTRATION);
    Double high = fields.optional("high").number(CONCENTRATION);
    Unit unit = unit(fields);
    if (!fields.has("low") && !fields.has("high")) {
      fields.refuse(
          ProblemCode.MISSING_FIELD,
          "low and high are both missing",
          "Maybe one of them was left out? A band needs at least one edge.");
      return null;
    }
    if (low != null && high != null && !(low < high)) {
      lowField.refuse(
          ProblemCode.WRONG_ORDER, "low (" + low + ") is not below high (" + high + ")");
      return null;
    }
    if (low == null && high != null && high == 0) {
      fields.refuse(
          ProblemCode.OUT_OF_RANGE,
          "high is 0 and low is missing; nothing is below zero",
          "Maybe the two edges are swapped?");
      return null;
    }
    return new ProgesteroneBand(id, at, low, high, unit);
  }

  private static @Nullable Unit unit(Fields fields) {
    return fields.optional("unit").word(Unit.class, text -> UnitSpelling.of(text).map(Unit::word));
  }

  private static List<Handling> handling(Field field) {
    List<Handling> all = new ArrayList<>();
    for (Field entry : field.entries(MOST_HANDLING)) {
      Handling handling = entry.word(Handling.class);
      if (handling != null) {
        all.add(handling);
      }
    }
    return all;
  }
}
