package io.github.tiderule.cases.published;

import static io.github.tiderule.cases.published.Measures.number;

import io.github.tiderule.engine.advice.DosesMade;
import io.github.tiderule.engine.insemination.DoseCount;
import io.github.tiderule.engine.insemination.Reckoning;
import io.github.tiderule.engine.insemination.SemenInHand;
import io.github.tiderule.engine.insemination.Span;
import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
import io.github.tiderule.rules.semen.Fraction;
import io.github.tiderule.rules.semen.FrozenUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** What semen is reckoned to hold, and how many doses that makes. */
final class SemenMeasures {

  private final Parameters parameters;

  private SemenMeasures(Parameters parameters) {
    this.parameters = parameters;
  }

  static SemenMeasures of(Parameters parameters) {
    return new SemenMeasures(parameters);
  }

  Map<String, ToDoubleFunction<List<String>>> known() {
    return Map.of(
        "look-least", a -> density(a.get(0)).least(),
        "look-most", a -> density(a.get(0)).most(),
        "usable", a -> usable(number(a, 0), number(a, 1), number(a, 2)),
        "dose-floor", a -> floor(a.get(0)));
  }

  /** Millions in one millilitre of a look. */
  private Span density(String word) {
    SemenColour look =
        Arrays.stream(SemenColour.values())
            .filter(colour -> colour.word().equals(word))
            .findFirst()
            .orElseThrow();
    return Objects.requireNonNull(ejaculate(look, null, null).sperm());
  }

  private SemenInHand ejaculate(
      SemenColour look, @Nullable Double million, @Nullable Double percent) {
    return Reckoning.of(
        new Ejaculate(
            null,
            List.of(new EjaculateFraction(Fraction.SPERM_RICH, 1.0, look)),
            million,
            percent,
            percent,
            null),
        parameters);
  }

  /** Usable millions of so many, by the shares that swim and look normal. */
  private double usable(double million, double motilePercent, double normalPercent) {
    Certificate certificate =
        new Certificate(FrozenUnit.STRAW, 1, million, null, motilePercent, normalPercent);
    return Objects.requireNonNull(Reckoning.of(certificate, parameters).usable()).least();
  }

  /** The fewest millions, in whole ones, that make a dose by a route. */
  private double floor(String route) {
    for (int million = 1; million <= 1000; million++) {
      for (DosesMade doses :
          DoseCount.of(ejaculate(SemenColour.MILKY, (double) million, 100.0), parameters)) {
        if (doses.route().word().equals(route) && doses.least() > 0) {
          return million;
        }
      }
    }
    return Double.NaN;
  }
}
