package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.validation.Limits;
import io.github.tiderule.engine.validation.ObservationConsistency;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
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

  private static final int MOST_HANDLING = 20;

  private ProgesteroneReader() {}

  static @Nullable Observation value(
      String id, @Nullable Instant at, Fields fields, Season season) {
    Instant reportedAt = season.instant(fields.optional("reportedAt"));
    ObservationConsistency.reported(at, reportedAt, season.dates()).ifPresent(fields::refuse);
    Double value = fields.required("value").number(Limits.CONCENTRATION);
    Comparator comparator = fields.optional("comparator").word(Comparator.class);
    ObservationConsistency.limit(value, comparator).ifPresent(fields::refuse);
    Unit unit = unit(fields);
    Method method = fields.optional("method").word(Method.class);
    String laboratory = fields.optional("laboratory").text(Limits.NAME);
    Specimen specimen = fields.optional("specimen").word(Specimen.class);
    Tube tube = fields.optional("tube").word(Tube.class);
    List<Handling> handling = handling(fields.optional("handling"));
    String asReported = fields.optional("asReported").text(Limits.AS_REPORTED);
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
    Double low = fields.optional("low").number(Limits.CONCENTRATION);
    Double high = fields.optional("high").number(Limits.CONCENTRATION);
    Unit unit = unit(fields);
    if (!fields.has("low") && !fields.has("high")) {
      fields.refuse(ObservationConsistency.noEdge());
      return null;
    }
    ObservationConsistency.edges(low, high).ifPresent(fields::refuse);
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
