package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Checks the observations of one season. Not for use by many threads. */
final class ObservationValidation {

  private final SeasonDates dates;
  private final UniqueIds ids = new UniqueIds();

  ObservationValidation(SeasonDates dates) {
    this.dates = dates;
  }

  void check(Place place, Observation observation) {
    id(place, observation.id());
    @Nullable Instant at = observation.at();
    if (place.has("at", at) && at != null) {
      place.note(dates.ofSeason("at", at));
    }
    if (observation instanceof Progesterone value) {
      value(place, value);
    } else if (observation instanceof ProgesteroneBand band) {
      band(place, band);
    } else if (observation instanceof Smear smear) {
      smear(place, smear);
    } else if (observation instanceof PregnancyScan scan) {
      scan(place, scan);
    } else if (observation instanceof Radiograph radiograph) {
      radiograph(place, radiograph);
    } else {
      words(place, observation);
    }
  }

  private void id(Place place, @Nullable String id) {
    place.text("id", id, Limits.ID);
    if (place.has("id", id) && id != null && !id.isBlank()) {
      place.note(ids.add(id, place.path() + ".id"));
    }
  }

  private void value(Place place, Progesterone value) {
    if (value.reportedAt() != null) {
      place.note(dates.ofSeason("reportedAt", value.reportedAt()));
    }
    place.note(ObservationConsistency.reported(value.at(), value.reportedAt(), dates));
    place.number("value", value.value(), Limits.CONCENTRATION);
    place.note(ObservationConsistency.limit(value.value(), value.comparator()));
    place.has("method", value.method());
    place.text("laboratory", value.laboratory(), Limits.NAME);
    place.words("handling", value.handling());
    place.text("asReported", value.asReported(), Limits.AS_REPORTED);
  }

  private static void band(Place place, ProgesteroneBand band) {
    place.number("low", band.low(), Limits.CONCENTRATION);
    place.number("high", band.high(), Limits.CONCENTRATION);
    if (band.low() == null && band.high() == null) {
      place.note(ObservationConsistency.noEdge());
    }
    place.note(ObservationConsistency.edges(band.low(), band.high()));
  }

  private static void smear(Place place, Smear smear) {
    place.number("cornifiedPercent", smear.cornifiedPercent(), Limits.PERCENT);
    if (smear.cornifiedPercent() == null && smear.neutrophils() == null) {
      place.note(ObservationConsistency.emptySmear());
    }
  }

  private static void scan(Place place, PregnancyScan scan) {
    place.has("finding", scan.finding());
    diameters(place, "innerChorionicCavityMm", scan.innerChorionicCavityMm());
    diameters(place, "biparietalMm", scan.biparietalMm());
    place.whole("fetuses", scan.fetuses(), Limits.PUPS);
    if (scan.innerChorionicCavityMm() != null && scan.biparietalMm() != null) {
      place.note(
          ObservationConsistency.scan(
              scan.finding(), scan.innerChorionicCavityMm(), scan.biparietalMm(), scan.fetuses()));
    }
  }

  private static void diameters(Place place, String name, List<Double> mm) {
    place.values(
        name, mm, Limits.FETUSES, (entry, one) -> place.number(entry, one, Limits.MILLIMETRES));
  }

  private static void radiograph(Place place, Radiograph radiograph) {
    place.whole("fetuses", radiograph.fetuses(), Limits.PUPS);
    if (radiograph.fetuses() == null && radiograph.skeletonSeen() == null) {
      place.note(ObservationConsistency.emptyRadiograph());
    }
  }

  /** Observations of which one word, or one number, is all there is. */
  private static void words(Place place, Observation observation) {
    if (observation instanceof Vaginoscopy look) {
      place.has("folds", look.folds());
    } else if (observation instanceof Sign sign) {
      place.has("sign", sign.sign());
      place.note(ObservationConsistency.reason(sign));
    } else if (observation instanceof OvaryScan scan) {
      place.has("finding", scan.finding());
    } else if (observation instanceof BreedingDone breeding) {
      place.has("semen", breeding.semen());
      place.has("route", breeding.route());
      place.text("sire", breeding.sire(), Limits.NAME);
      place.text("note", breeding.note(), Limits.NOTE);
    } else if (observation instanceof BodyTemperature temperature) {
      place.number("celsius", temperature.celsius(), Limits.BODY_CELSIUS);
    } else if (!(observation instanceof LhTest)) {
      throw new IllegalStateException("no check for " + observation.getClass());
    }
  }
}
