package io.github.tiderule.engine.insemination;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.AmountUnit;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
import io.github.tiderule.rules.semen.FrozenUnit;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reckons from what was measured to the usable sperm, and writes every line of it down.
 *
 * <pre>
 * sperm  = volume × concentration, or units × sperm in one
 * usable = sperm × progressively motile % ÷ 100 × normal % ÷ 100   (thomas-2013)
 * </pre>
 */
public final class Reckoning {

  private final Parameters parameters;
  private final List<Amount> lines = new ArrayList<>();
  private final List<Sentence> missing = new ArrayList<>();

  private Reckoning(Parameters parameters) {
    this.parameters = parameters;
  }

  /** What an ejaculate holds; only tubes that bear sperm count. */
  public static SemenInHand of(Ejaculate ejaculate, Parameters parameters) {
    return new Reckoning(parameters).fresh(ejaculate);
  }

  /** What a parcel of chilled semen holds. */
  public static SemenInHand of(Arrival arrival, Parameters parameters) {
    return new Reckoning(parameters).chilled(arrival);
  }

  /** What the frozen semen of a certificate holds. */
  public static SemenInHand of(Certificate certificate, Parameters parameters) {
    return new Reckoning(parameters).frozen(certificate);
  }

  private SemenInHand fresh(Ejaculate ejaculate) {
    List<EjaculateFraction> tubes =
        ejaculate.fractions().stream().filter(tube -> tube.fraction().bearsSperm()).toList();
    double volume = 0;
    @Nullable Span sperm = tubes.isEmpty() ? null : Span.of(0);
    if (tubes.isEmpty()) {
      missing.add(Sentence.of("the sperm-rich fraction: none of the tubes is one"));
    }
    for (EjaculateFraction tube : tubes) {
      Double millilitres = tube.volumeMl();
      Optional<Span> density = density(tube, ejaculate.concentrationMillionPerMl());
      if (millilitres == null) {
        missing.add(Sentence.of("the volume of the {} tube", tube.fraction()));
      }
      if (density.isEmpty()) {
        missing.add(
            Sentence.of(
                "the concentration of the {} tube: its look has no published range, so it must be"
                    + " counted",
                tube.fraction()));
      }
      if (millilitres == null || density.isEmpty()) {
        sperm = null;
        continue;
      }
      volume += millilitres;
      Span inTube = density.get().times(millilitres);
      line(
          Sentence.of("sperm, {} tube", tube.fraction()),
          Sentence.of("{:tenths} mL × {} million/mL", millilitres, density.get().figures()),
          inTube);
      sperm = sperm == null ? null : sperm.plus(inTube);
    }
    if (tubes.size() > 1 && sperm != null) {
      line(Sentence.of("sperm, all tubes"), Sentence.of("their sum"), sperm);
    }
    return inHand(
        Semen.FRESH,
        sperm == null ? null : Digits.significant(volume, 12),
        sperm,
        ejaculate.progressivelyMotilePercent(),
        ejaculate.normalPercent(),
        null);
  }

  private Optional<Span> density(EjaculateFraction tube, @Nullable Double counted) {
    if (counted != null) {
      return Optional.of(Span.of(counted));
    }
    return tube.appearance() == null
        ? Optional.empty()
        : LookDensity.of(tube.appearance(), parameters);
  }

  private SemenInHand chilled(Arrival arrival) {
    @Nullable Double counted = arrival.countedMillion();
    @Nullable Double sent = arrival.totalSpermMillion();
    @Nullable Span sperm = null;
    if (counted != null) {
      sperm = Span.of(counted);
      line(
          Sentence.of("sperm, counted here"),
          Sentence.of(
              "{:tenths} mL × {:measured} million/mL",
              zeroIfNull(arrival.volumeMl()),
              zeroIfNull(arrival.concentrationMillionPerMl())),
          sperm);
    } else if (sent != null) {
      sperm = Span.of(sent);
      line(
          Sentence.of("sperm in the parcel"),
          Sentence.of("the sender's sheet, not counted here"),
          sperm);
    } else {
      missing.add(
          Sentence.of(
              "the sperm in the parcel: its volume and concentration, or the sender's total"));
    }
    return inHand(
        Semen.CHILLED,
        arrival.volumeMl(),
        sperm,
        arrival.progressivelyMotilePercent(),
        arrival.normalPercent(),
        null);
  }

  private static double zeroIfNull(@Nullable Double value) {
    return value == null ? 0 : value;
  }

  private SemenInHand frozen(Certificate certificate) {
    int units = certificate.units();
    Double each = certificate.spermPerUnitMillion();
    @Nullable Span sperm = null;
    if (each == null) {
      missing.add(Sentence.of("the sperm in one {}", certificate.unit()));
    } else {
      sperm = Span.of(each).times(units);
      line(
          Sentence.of("sperm, all of it"),
          Sentence.of(ofUnits(certificate.unit()), units, each),
          sperm);
    }
    Double millilitres = certificate.volumeMlPerUnit();
    return inHand(
        Semen.FROZEN,
        millilitres == null ? null : Digits.significant(millilitres * units, 12),
        sperm,
        certificate.progressivelyMotilePercent(),
        certificate.normalPercent(),
        new SemenInHand.Units(certificate.unit(), units));
  }

  private static String ofUnits(FrozenUnit unit) {
    return switch (unit) {
      case STRAW -> "{:# straw|# straws} × {:measured} million";
      case VIAL -> "{:# vial|# vials} × {:measured} million";
      case PELLET -> "{:# pellet|# pellets} × {:measured} million";
    };
  }

  private SemenInHand inHand(
      Semen semen,
      @Nullable Double volumeMl,
      @Nullable Span sperm,
      @Nullable Double motile,
      @Nullable Double normal,
      SemenInHand.@Nullable Units units) {
    if (motile == null) {
      missing.add(
          switch (semen) {
            case FROZEN -> Sentence.of("progressive motility after thawing");
            case CHILLED -> Sentence.of("progressive motility on arrival");
            default -> Sentence.of("progressive motility");
          });
    }
    if (normal == null) {
      missing.add(
          switch (semen) {
            case FROZEN -> Sentence.of("normal forms after thawing");
            case CHILLED -> Sentence.of("normal forms on arrival");
            default -> Sentence.of("normal forms");
          });
    }
    @Nullable Span usable = null;
    if (sperm != null && motile != null && normal != null) {
      usable = sperm.percent(motile).percent(normal);
      line(
          Sentence.of("usable sperm"),
          Sentence.of(
              "{} million × {:tenths} % progressively motile × {:tenths} % normal",
              sperm.figures(), motile, normal),
          usable);
    } else if (sperm != null && motile != null) {
      line(
          Sentence.of("progressively motile sperm, normal or not"),
          Sentence.of("{} million × {:tenths} %", sperm.figures(), motile),
          sperm.percent(motile));
    }
    if (usable != null && units != null && units.count() > 1) {
      line(
          Sentence.of("usable sperm in one {}", units.unit()),
          Sentence.of("{} million ÷ {:whole}", usable.figures(), units.count()),
          usable.over(units.count()));
    }
    return new SemenInHand(semen, volumeMl, sperm, motile, normal, usable, units, lines, missing);
  }

  private void line(Sentence what, Sentence working, Span amount) {
    lines.add(new Amount(what, working, amount.least(), amount.most(), AmountUnit.MILLION));
  }
}
