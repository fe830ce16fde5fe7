package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.validation.Limits;
import io.github.tiderule.engine.validation.SeasonConsistency;
import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
import io.github.tiderule.rules.semen.Fraction;
import io.github.tiderule.rules.semen.FrozenUnit;
import io.github.tiderule.rules.semen.Insemination;
import io.github.tiderule.rules.semen.Wanted;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads the semen in hand on the day of insemination. */
final class InseminationReader {

  private final Season season;

  private InseminationReader(Season season) {
    this.season = season;
  }

  static @Nullable Insemination read(@Nullable Fields fields, Season season) {
    return fields == null ? null : new InseminationReader(season).insemination(fields);
  }

  private Insemination insemination(Fields fields) {
    Instant at = season.instant(fields.optional("at"));
    Ejaculate ejaculate = ejaculate(fields.optional("ejaculate").members());
    Certificate certificate = certificate(fields.optional("certificate").members());
    Arrival arrival = arrival(fields.optional("arrival").members());
    Wanted wanted = wanted(fields.optional("wanted").members());
    Double extender = Quantities.celsius(fields.optional("extenderTemperatureC"));
    fields.refuseOthers();
    @Nullable Instant collectedAt = SeasonConsistency.collectedAt(ejaculate, arrival);
    SeasonConsistency.collected("at", at, collectedAt, season.dates()).ifPresent(fields::refuse);
    return new Insemination(at, ejaculate, certificate, arrival, wanted, extender);
  }

  private @Nullable Ejaculate ejaculate(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    Instant collectedAt = season.instant(fields.optional("collectedAt"));
    List<EjaculateFraction> fractions = new ArrayList<>();
    Field tubes = fields.required("fractions");
    List<Field> entries = tubes.entries(Limits.TUBES);
    for (Field entry : entries) {
      EjaculateFraction fraction = fraction(entry.members());
      if (fraction != null) {
        fractions.add(fraction);
      }
    }
    Double density = Quantities.density(fields.optional("concentrationMillionPerMl"));
    Double motile = Quantities.percent(fields.optional("progressivelyMotilePercent"));
    Double normal = Quantities.percent(fields.optional("normalPercent"));
    Double temperature = Quantities.celsius(fields.optional("temperatureC"));
    fields.refuseOthers();
    return new Ejaculate(collectedAt, fractions, density, motile, normal, temperature);
  }

  private static @Nullable EjaculateFraction fraction(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    Fraction fraction = fields.required("fraction").word(Fraction.class);
    Double volume = Quantities.millilitres(fields.optional("volumeMl"));
    SemenColour appearance = fields.optional("appearance").word(SemenColour.class);
    fields.refuseOthers();
    return fraction == null ? null : new EjaculateFraction(fraction, volume, appearance);
  }

  private static @Nullable Certificate certificate(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    FrozenUnit unit = fields.optional("unit").word(FrozenUnit.class);
    Integer units = fields.required("units").wholeNumber(Limits.FROZEN_UNITS);
    Double each = Quantities.millions(fields.optional("spermPerUnitMillion"));
    Double volume = Quantities.millilitres(fields.optional("volumeMlPerUnit"));
    Double motile = Quantities.percent(fields.optional("postThawProgressivelyMotilePercent"));
    Double normal = Quantities.percent(fields.optional("postThawNormalPercent"));
    fields.refuseOthers();
    return units == null
        ? null
        : new Certificate(
            unit == null ? FrozenUnit.STRAW : unit, units, each, volume, motile, normal);
  }

  private @Nullable Arrival arrival(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    Instant collectedAt = season.instant(fields.optional("collectedAt"));
    Instant arrivedAt = season.instant(fields.optional("arrivedAt"));
    SeasonConsistency.collected("arrivedAt", arrivedAt, collectedAt, season.dates())
        .ifPresent(fields::refuse);
    Arrival arrival =
        new Arrival(
            collectedAt,
            arrivedAt,
            Quantities.celsiusOnArrival(fields.optional("temperatureC")),
            Quantities.millilitres(fields.optional("volumeMl")),
            Quantities.density(fields.optional("concentrationMillionPerMl")),
            Quantities.millions(fields.optional("totalSpermMillion")),
            Quantities.percent(fields.optional("progressivelyMotilePercent")),
            Quantities.percent(fields.optional("normalPercent")));
    fields.refuseOthers();
    return arrival;
  }

  private static Wanted wanted(@Nullable Fields fields) {
    if (fields == null) {
      return Wanted.nothing();
    }
    Wanted wanted =
        new Wanted(
            Quantities.millilitres(fields.optional("volumeMl")),
            Quantities.densityWanted(fields.optional("concentrationMillionPerMl")),
            fields.optional("doses").wholeNumber(Limits.DOSES));
    fields.refuseOthers();
    return wanted;
  }
}
