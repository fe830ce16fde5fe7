package io.github.tiderule.format.cycle;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Range;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.rules.fact.semen.Semen;
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

  private static final int MOST_TUBES = 12;
  private static final Range UNITS = Range.of(1, 200, "");
  private static final Range DOSES = Range.of(1, 4, "doses");

  private final Season season;

  private InseminationReader(Season season) {
    this.season = season;
  }

  static @Nullable Insemination read(@Nullable Fields fields, Season season) {
    return fields == null ? null : new InseminationReader(season).insemination(fields);
  }

  /** The kind of semen that is described, for a file that does not say what she is bred with. */
  static @Nullable Semen kind(@Nullable Insemination insemination) {
    if (insemination == null) {
      return null;
    }
    return insemination.certificate() != null
        ? Semen.FROZEN
        : insemination.arrival() != null
            ? Semen.CHILLED
            : insemination.ejaculate() != null ? Semen.FRESH : null;
  }

  private Insemination insemination(Fields fields) {
    Field atField = fields.optional("at");
    Instant at = season.instant(atField);
    Ejaculate ejaculate = ejaculate(fields.optional("ejaculate").members());
    Certificate certificate = certificate(fields.optional("certificate").members());
    Arrival arrival = arrival(fields.optional("arrival").members());
    Wanted wanted = wanted(fields.optional("wanted").members());
    Double extender = Quantities.celsius(fields.optional("extenderTemperatureC"));
    fields.refuseOthers();
    @Nullable Instant fresh = ejaculate == null ? null : ejaculate.collectedAt();
    @Nullable Instant sent = arrival == null ? null : arrival.collectedAt();
    inOrder("collectedAt", sent == null ? fresh : sent, atField, at);
    return new Insemination(at, ejaculate, certificate, arrival, wanted, extender);
  }

  private void inOrder(
      String name, @Nullable Instant earlier, Field laterField, @Nullable Instant later) {
    if (earlier != null && later != null && later.isBefore(earlier)) {
      laterField.refuse(
          ProblemCode.WRONG_ORDER,
          laterField.name()
              + " ("
              + season.words(later)
              + ") is before "
              + name
              + " ("
              + season.words(earlier)
              + ")");
    }
  }

  private @Nullable Ejaculate ejaculate(@Nullable Fields fields) {
    if (fields == null) {
      return null;
    }
    Instant collectedAt = season.instant(fields.optional("collectedAt"));
    List<EjaculateFraction> fractions = new ArrayList<>();
    Field tubes = fields.required("fractions");
    List<Field> entries = tubes.entries(MOST_TUBES);
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
    Integer units = fields.required("units").wholeNumber(UNITS);
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
    Field arrivedField = fields.optional("arrivedAt");
    Instant arrivedAt = season.instant(arrivedField);
    inOrder("collectedAt", collectedAt, arrivedField, arrivedAt);
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
            fields.optional("doses").wholeNumber(DOSES));
    fields.refuseOthers();
    return wanted;
  }
}
