package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.validation.Limits;
import io.github.tiderule.engine.validation.ObservationConsistency;
import io.github.tiderule.engine.validation.UniqueIds;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.RefusalReason;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads observations of every kind but progesterone and pregnancy, which {@link ProgesteroneReader}
 * and {@link PregnancyReader} read.
 */
final class ObservationReader {

  /** What an LH test shows. */
  private enum LhResult implements Worded {
    POSITIVE,
    NEGATIVE;

    @Override
    public String word() {
      return this == POSITIVE ? "positive" : "negative";
    }
  }

  private final Season season;

  private ObservationReader(Season season) {
    this.season = season;
  }

  static List<Observation> all(Field field, Season season) {
    ObservationReader reader = new ObservationReader(season);
    List<Observation> observations = new ArrayList<>();
    UniqueIds ids = new UniqueIds();
    for (Field entry : field.entries(Limits.OBSERVATIONS)) {
      Fields fields = entry.members();
      if (fields == null) {
        continue;
      }
      Field idField = fields.required("id");
      String id = idField.text(Limits.ID);
      if (id != null) {
        ids.add(id, idField.at().text()).ifPresent(fields::refuse);
      }
      Observation observation = reader.observation(id == null ? "" : id, fields);
      if (observation != null) {
        observations.add(observation);
      }
    }
    return observations;
  }

  private @Nullable Observation observation(String id, Fields fields) {
    Kind kind = fields.required("kind").word(Kind.class);
    Instant at = season.instant(fields.required("at"));
    if (kind == null) {
      // Which fields belong here is unknown; only those of no kind at all are surely wrong.
      fields.refuseOthersExcept(Kind::anyHas);
      return null;
    }
    Instant when = at == null ? Instant.EPOCH : at;
    Observation observation =
        switch (kind) {
          case PROGESTERONE -> ProgesteroneReader.value(id, at, fields, season);
          case PROGESTERONE_BAND -> ProgesteroneReader.band(id, when, fields);
          case LH -> lh(id, when, fields);
          case CYTOLOGY -> smear(id, when, fields);
          case VAGINOSCOPY -> vaginoscopy(id, when, fields);
          case SIGN -> sign(id, when, fields);
          case ULTRASOUND -> scan(id, when, fields);
          case BREEDING -> breeding(id, when, fields);
          case SCAN -> PregnancyReader.scan(id, when, fields);
          case RADIOGRAPH -> PregnancyReader.radiograph(id, when, fields);
          case TEMPERATURE -> PregnancyReader.temperature(id, when, fields);
        };
    fields.refuseOthers(kind::elsewhere);
    return at == null ? null : observation;
  }

  private static @Nullable Observation lh(String id, Instant at, Fields fields) {
    LhResult result = fields.required("result").word(LhResult.class);
    return result == null ? null : new LhTest(id, at, result == LhResult.POSITIVE);
  }

  private static @Nullable Observation smear(String id, Instant at, Fields fields) {
    Double cornified = fields.optional("cornifiedPercent").number(Limits.PERCENT);
    Neutrophils neutrophils = fields.optional("neutrophils").word(Neutrophils.class);
    if (!fields.has("cornifiedPercent") && !fields.has("neutrophils")) {
      fields.refuse(ObservationConsistency.emptySmear());
      return null;
    }
    return new Smear(id, at, cornified, neutrophils);
  }

  private static @Nullable Observation vaginoscopy(String id, Instant at, Fields fields) {
    Folds folds = fields.required("folds").word(Folds.class);
    return folds == null ? null : new Vaginoscopy(id, at, folds);
  }

  private static @Nullable Observation sign(String id, Instant at, Fields fields) {
    SignKind sign = fields.required("sign").word(SignKind.class);
    Boolean present = fields.required("present").flag();
    RefusalReason reason = fields.optional("reason").word(RefusalReason.class);
    if (sign == null || present == null) {
      return null;
    }
    Sign seen = new Sign(id, at, sign, present, reason);
    ObservationConsistency.reason(seen).ifPresent(fields::refuse);
    return seen;
  }

  private static @Nullable Observation scan(String id, Instant at, Fields fields) {
    OvaryFinding finding = fields.required("finding").word(OvaryFinding.class);
    return finding == null ? null : new OvaryScan(id, at, finding);
  }

  private static @Nullable Observation breeding(String id, Instant at, Fields fields) {
    Semen semen = fields.required("semen").word(Semen.class);
    Route route = fields.required("route").word(Route.class);
    String sire = fields.optional("sire").text(Limits.NAME);
    String note = fields.optional("note").text(Limits.NOTE);
    return semen == null || route == null
        ? null
        : new BreedingDone(id, at, semen, route, sire, note);
  }
}
