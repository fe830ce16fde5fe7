package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.validation.Limits;
import io.github.tiderule.engine.validation.ObservationConsistency;
import io.github.tiderule.engine.validation.SeasonConsistency;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what is seen of a pregnancy, and what became of it. */
final class PregnancyReader {

  private PregnancyReader() {}

  static @Nullable Observation scan(String id, Instant at, Fields fields) {
    ScanFinding finding = fields.required("finding").word(ScanFinding.class);
    Field cavityField = fields.optional("innerChorionicCavityMm");
    List<Double> cavities = millimetres(cavityField);
    List<Double> skulls = millimetres(fields.optional("biparietalMm"));
    Integer fetuses = fields.optional("fetuses").wholeNumber(Limits.PUPS);
    ObservationConsistency.scan(finding, cavities, skulls, fetuses).ifPresent(fields::refuse);
    return finding == null ? null : new PregnancyScan(id, at, finding, cavities, skulls, fetuses);
  }

  static @Nullable Observation radiograph(String id, Instant at, Fields fields) {
    Integer fetuses = fields.optional("fetuses").wholeNumber(Limits.PUPS);
    Boolean skeleton = fields.optional("skeletonSeen").flag();
    if (!fields.has("fetuses") && !fields.has("skeletonSeen")) {
      fields.refuse(ObservationConsistency.emptyRadiograph());
      return null;
    }
    return new Radiograph(id, at, fetuses, skeleton);
  }

  static @Nullable Observation temperature(String id, Instant at, Fields fields) {
    Double celsius = fields.required("celsius").number(Limits.BODY_CELSIUS);
    return celsius == null ? null : new BodyTemperature(id, at, celsius);
  }

  /** What became of a season; nothing known where the file says nothing. */
  static Outcome outcome(@Nullable Fields fields, Season season, @Nullable LocalDate firstBloodOn) {
    if (fields == null) {
      return Outcome.unknown();
    }
    Boolean pregnant = fields.optional("pregnant").flag();
    LocalDate whelped = season.pastDay(fields.optional("whelpedOn"));
    Integer litter = fields.optional("litterSize").wholeNumber(Limits.PUPS);
    Integer alive = fields.optional("pupsBornAlive").wholeNumber(Limits.PUPS);
    fields.refuseOthers();
    Outcome outcome = new Outcome(pregnant, whelped, litter, alive);
    fields.refuse(SeasonConsistency.outcome(outcome, firstBloodOn));
    return outcome;
  }

  private static List<Double> millimetres(Field field) {
    List<Double> all = new ArrayList<>();
    for (Field entry : field.entries(Limits.FETUSES)) {
      Double one = entry.number(Limits.MILLIMETRES);
      if (one != null) {
        all.add(one);
      }
    }
    return all;
  }
}
