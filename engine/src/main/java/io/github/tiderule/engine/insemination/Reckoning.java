package io.github.tiderule.engine.insemination;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
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

  private static final String MILLION = "million";

  private final Parameters parameters;
  private final List<Amount> lines = new ArrayList<>();
  private final List<String> missing = new ArrayList<>();

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
      missing.add("the sperm-rich fraction: none of the tubes is one");
    }
    for (EjaculateFraction tube : tubes) {
      Double millilitres = tube.volumeMl();
      Optional<Span> density = density(tube, ejaculate.concentrationMillionPerMl());
      if (millilitres == null) {
        missing.add("the volume of the " + tube.fraction().word() + " tube");
      }
      if (density.isEmpty()) {
        missing.add(
            "the concentration of the "
                + tube.fraction().word()
                + " tube: its look has no published range, so it must be counted");
      }
      if (millilitres == null || density.isEmpty()) {
        sperm = null;
        continue;
      }
      volume += millilitres;
      Span inTube = density.get().times(millilitres);
      line(
          "sperm, " + tube.fraction().word() + " tube",
          Digits.plain(millilitres) + " mL × " + density.get().words() + " million/mL",
          inTube);
      sperm = sperm == null ? null : sperm.plus(inTube);
    }
    if (tubes.size() > 1 && sperm != null) {
      line("sperm, all tubes", "their sum", sperm);
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
          "sperm, counted here",
          Digits.plain(zeroIfNull(arrival.volumeMl()))
              + " mL × "
              + Amount.words(zeroIfNull(arrival.concentrationMillionPerMl()))
              + " million/mL",
          sperm);
    } else if (sent != null) {
      sperm = Span.of(sent);
      line("sperm in the parcel", "the sender's sheet, not counted here", sperm);
    } else {
      missing.add("the sperm in the parcel: its volume and concentration, or the sender's total");
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
      missing.add("the sperm in one " + certificate.unit().word());
    } else {
      sperm = Span.of(each).times(units);
      line(
          "sperm, all of it",
          units
              + " "
              + certificate.unit().word()
              + (units == 1 ? "" : "s")
              + " × "
              + Amount.words(each)
              + " million",
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

  private SemenInHand inHand(
      Semen semen,
      @Nullable Double volumeMl,
      @Nullable Span sperm,
      @Nullable Double motile,
      @Nullable Double normal,
      SemenInHand.@Nullable Units units) {
    String when =
        switch (semen) {
          case FROZEN -> " after thawing";
          case CHILLED -> " on arrival";
          default -> "";
        };
    if (motile == null) {
      missing.add("progressive motility" + when);
    }
    if (normal == null) {
      missing.add("normal forms" + when);
    }
    @Nullable Span usable = null;
    if (sperm != null && motile != null && normal != null) {
      usable = sperm.percent(motile).percent(normal);
      line(
          "usable sperm",
          sperm.words()
              + " million × "
              + Digits.plain(motile)
              + " % progressively motile × "
              + Digits.plain(normal)
              + " % normal",
          usable);
    } else if (sperm != null && motile != null) {
      line(
          "progressively motile sperm, normal or not",
          sperm.words() + " million × " + Digits.plain(motile) + " %",
          sperm.percent(motile));
    }
    if (usable != null && units != null && units.count() > 1) {
      line(
          "usable sperm in one " + units.unit().word(),
          usable.words() + " million ÷ " + units.count(),
          usable.over(units.count()));
    }
    return new SemenInHand(semen, volumeMl, sperm, motile, normal, usable, units, lines, missing);
  }

  private void line(String what, String working, Span amount) {
    lines.add(new Amount(what, working, amount.least(), amount.most(), MILLION));
  }
}
