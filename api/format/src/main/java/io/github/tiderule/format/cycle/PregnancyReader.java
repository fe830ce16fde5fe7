package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Range;
import io.github.tiderule.format.problem.ProblemCode;
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

  private static final Range MILLIMETRES = Range.of(1, 120, "mm");
  private static final Range CELSIUS = Range.of(30, 44, "degrees C");
  static final Range PUPS = Range.of(0, 30, "pups");
  private static final int MOST_FETUSES = 30;

  private PregnancyReader() {}

  static @Nullable Observation scan(String id, Instant at, Fields fields) {
    ScanFinding finding = fields.required("finding").word(ScanFinding.class);
    Field cavityField = fields.optional("innerChorionicCavityMm");
    List<Double> cavities = millimetres(cavityField);
    List<Double> skulls = millimetres(fields.optional("biparietalMm"));
    Integer fetuses = fields.optional("fetuses").wholeNumber(PUPS);
    if (finding == ScanFinding.NOT_PREGNANT
        && !(cavities.isEmpty() && skulls.isEmpty() && (fetuses == null || fetuses == 0))) {
      fields.refuse(
          ProblemCode.CONTRADICTION,
          "finding is \"not-pregnant\", yet there are fetuses or measurements of them",
          "Maybe one of the two is a slip?");
    }
    return finding == null ? null : new PregnancyScan(id, at, finding, cavities, skulls, fetuses);
  }

  static @Nullable Observation radiograph(String id, Instant at, Fields fields) {
    Integer fetuses = fields.optional("fetuses").wholeNumber(PUPS);
    Boolean skeleton = fields.optional("skeletonSeen").flag();
    if (!fields.has("fetuses") && !fields.has("skeletonSeen")) {
      fields.refuse(
          ProblemCode.MISSING_FIELD,
          "fetuses and skeletonSeen are both missing",
          "Maybe one of them was left out? A radiograph needs at least one.");
      return null;
    }
    return new Radiograph(id, at, fetuses, skeleton);
  }

  static @Nullable Observation temperature(String id, Instant at, Fields fields) {
    Double celsius = fields.required("celsius").number(CELSIUS);
    return celsius == null ? null : new BodyTemperature(id, at, celsius);
  }

  /** What became of a season; nothing known where the file says nothing. */
  static Outcome outcome(@Nullable Fields fields, Season season, @Nullable LocalDate firstBloodOn) {
    if (fields == null) {
      return Outcome.unknown();
    }
    Field pregnantField = fields.optional("pregnant");
    Boolean pregnant = pregnantField.flag();
    Field whelpedField = fields.optional("whelpedOn");
    LocalDate whelped = season.pastDay(whelpedField);
    Integer litter = fields.optional("litterSize").wholeNumber(PUPS);
    Field aliveField = fields.optional("pupsBornAlive");
    Integer alive = aliveField.wholeNumber(PUPS);
    fields.refuseOthers();
    if (whelped != null && firstBloodOn != null && whelped.isBefore(firstBloodOn)) {
      whelpedField.refuse(
          ProblemCode.WRONG_ORDER,
          "whelpedOn (" + whelped + ") is before first blood (" + firstBloodOn + ")");
    }
    if (Boolean.FALSE.equals(pregnant) && (whelped != null || (litter != null && litter > 0))) {
      pregnantField.refuse(
          ProblemCode.CONTRADICTION, "pregnant is false, yet there is a whelping or a litter");
    }
    if (litter != null && alive != null && alive > litter) {
      aliveField.refuse(
          ProblemCode.OUT_OF_RANGE,
          "pupsBornAlive (" + alive + ") is more than litterSize (" + litter + ")");
    }
    return new Outcome(pregnant, whelped, litter, alive);
  }

  private static List<Double> millimetres(Field field) {
    List<Double> all = new ArrayList<>();
    for (Field entry : field.entries(MOST_FETUSES)) {
      Double one = entry.number(MILLIMETRES);
      if (one != null) {
        all.add(one);
      }
    }
    return all;
  }
}
