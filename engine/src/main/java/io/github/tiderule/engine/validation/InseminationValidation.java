package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
import io.github.tiderule.rules.semen.Insemination;
import io.github.tiderule.rules.semen.Wanted;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Checks the semen in hand. */
record InseminationValidation(SeasonDates dates) {

  void check(Place place, Insemination insemination) {
    moment(place, "at", insemination.at());
    @Nullable Ejaculate ejaculate = insemination.ejaculate();
    if (ejaculate != null) {
      check(place.of("ejaculate"), ejaculate);
    }
    if (insemination.certificate() != null) {
      check(place.of("certificate"), insemination.certificate());
    }
    @Nullable Arrival arrival = insemination.arrival();
    if (arrival != null) {
      check(place.of("arrival"), arrival);
    }
    if (place.has("wanted", insemination.wanted())) {
      check(place.of("wanted"), insemination.wanted());
    }
    place.number("extenderTemperatureC", insemination.extenderTemperatureC(), Limits.CELSIUS);
    place.note(
        SeasonConsistency.collected(
            "at", insemination.at(), SeasonConsistency.collectedAt(ejaculate, arrival), dates));
  }

  private void moment(Place place, String name, @Nullable Instant at) {
    if (at != null) {
      place.note(dates.ofSeason(name, at));
    }
  }

  private void check(Place place, Ejaculate ejaculate) {
    moment(place, "collectedAt", ejaculate.collectedAt());
    place.parts("fractions", ejaculate.fractions(), Limits.TUBES, InseminationValidation::fraction);
    density(place, ejaculate.concentrationMillionPerMl());
    quality(place, ejaculate.progressivelyMotilePercent(), ejaculate.normalPercent());
    place.number("temperatureC", ejaculate.temperatureC(), Limits.CELSIUS);
  }

  private static void fraction(Place place, EjaculateFraction tube) {
    place.has("fraction", tube.fraction());
    place.number("volumeMl", tube.volumeMl(), Limits.MILLILITRES);
  }

  private static void density(Place place, @Nullable Double millionPerMl) {
    place.number("concentrationMillionPerMl", millionPerMl, Limits.DENSITY);
  }

  private static void quality(
      Place place, @Nullable Double motilePercent, @Nullable Double normalPercent) {
    place.number("progressivelyMotilePercent", motilePercent, Limits.PERCENT);
    place.number("normalPercent", normalPercent, Limits.PERCENT);
  }

  private static void check(Place place, Certificate certificate) {
    place.has("unit", certificate.unit());
    place.whole("units", certificate.units(), Limits.FROZEN_UNITS);
    place.number("spermPerUnitMillion", certificate.spermPerUnitMillion(), Limits.MILLION_SPERM);
    place.number("volumeMlPerUnit", certificate.volumeMlPerUnit(), Limits.MILLILITRES);
    quality(place, certificate.progressivelyMotilePercent(), certificate.normalPercent());
  }

  private void check(Place place, Arrival arrival) {
    moment(place, "collectedAt", arrival.collectedAt());
    moment(place, "arrivedAt", arrival.arrivedAt());
    place.note(
        SeasonConsistency.collected(
            "arrivedAt", arrival.arrivedAt(), arrival.collectedAt(), dates));
    place.number("temperatureC", arrival.temperatureC(), Limits.CELSIUS_ON_ARRIVAL);
    place.number("volumeMl", arrival.volumeMl(), Limits.MILLILITRES);
    density(place, arrival.concentrationMillionPerMl());
    place.number("totalSpermMillion", arrival.totalSpermMillion(), Limits.MILLION_SPERM);
    quality(place, arrival.progressivelyMotilePercent(), arrival.normalPercent());
  }

  private static void check(Place place, Wanted wanted) {
    place.number("volumeMl", wanted.volumeMl(), Limits.MILLILITRES);
    place.number(
        "concentrationMillionPerMl", wanted.concentrationMillionPerMl(), Limits.DENSITY_WANTED);
    place.whole("doses", wanted.doses(), Limits.DOSES);
  }
}
