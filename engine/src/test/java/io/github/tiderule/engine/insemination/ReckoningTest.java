package io.github.tiderule.engine.insemination;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.engine.advice.DosesMade;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
import io.github.tiderule.rules.semen.Fraction;
import io.github.tiderule.rules.semen.FrozenUnit;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Semen reckoned by hand, with the units of every step, beside what the engine makes of it. */
class ReckoningTest {

  private static final Parameters PARAMETERS = Parameters.load();

  private static Ejaculate ejaculate(
      @Nullable Double density,
      @Nullable Double motile,
      @Nullable Double normal,
      EjaculateFraction... tubes) {
    return new Ejaculate(null, List.of(tubes), density, motile, normal, null);
  }

  private static EjaculateFraction tube(Fraction fraction, double millilitres, SemenColour look) {
    return new EjaculateFraction(fraction, millilitres, look);
  }

  private static Certificate straws(int units, double each, double motile, double normal) {
    return new Certificate(FrozenUnit.STRAW, units, each, 0.5, motile, normal);
  }

  /**
   * 2.5 mL × 300 million/mL = 750 million; × 0.85 = 637.5; × 0.80 = 510 million usable. Uterus: 510
   * ÷ 100 = 5 doses, 510 ÷ 150 = 3; vagina: 510 ÷ 200 = 2, 510 ÷ 400 = 1. The clear tubes do not
   * count.
   */
  @Test
  void aCountedEjaculate() {
    SemenInHand inHand =
        Reckoning.of(
            ejaculate(
                300.0,
                85.0,
                80.0,
                tube(Fraction.PRESPERM, 0.8, SemenColour.CLEAR),
                tube(Fraction.SPERM_RICH, 2.5, SemenColour.MILKY),
                tube(Fraction.PROSTATIC, 6, SemenColour.CLEAR)),
            PARAMETERS);
    assertThat(inHand.volumeMl(), is(2.5));
    assertThat(inHand.sperm(), is(Span.of(750)));
    assertThat(inHand.usable(), is(Span.of(510)));
    assertThat(
        inHand.lines().stream().map(line -> line.working().toString()).toList(),
        contains(
            "2.5 mL × 300 million/mL", "750 million × 85 % progressively motile × 80 % normal"));
    assertThat(
        DoseCount.of(inHand, PARAMETERS),
        contains(
            new DosesMade(Route.TRANSCERVICAL, 100, 150, 5, 5, 3, 3, 0, null),
            new DosesMade(Route.VAGINAL, 200, 400, 2, 2, 1, 1, 0, null)));
    assertThat(inHand.dose(2), is(Optional.of(new Dose(3.75e8, 85.0, 80.0))));
  }

  /**
   * Full milk is 400 to 750 million/mL (thomas-2013): 2 mL hold 800 to 1,500 million; × 0.7 × 0.75
   * = 420 to 787.5 million usable; 4 to 7 doses for the uterus. What was only looked at is no dose.
   */
  @Test
  void theLookCarriesItsRange() {
    SemenInHand inHand =
        Reckoning.of(
            ejaculate(null, 70.0, 75.0, tube(Fraction.SPERM_RICH, 2, SemenColour.MILKY)),
            PARAMETERS);
    assertThat(inHand.sperm(), is(new Span(800, 1500)));
    assertThat(inHand.usable(), is(new Span(420, 787.5)));
    DosesMade uterus = DoseCount.of(inHand, PARAMETERS).get(0);
    assertThat(List.of(uterus.least(), uterus.most()), contains(4, 7));
    assertThat(inHand.dose(1), is(Optional.empty()));
  }

  /** Two tubes: 1 mL creamy, 750 to 1,500, and 3 mL translucent, 0 to 750: 750 to 2,250 million. */
  @Test
  void tubesOfDifferentLookAdd() {
    SemenInHand inHand =
        Reckoning.of(
            ejaculate(
                null,
                null,
                null,
                tube(Fraction.SPERM_RICH, 1, SemenColour.CREAMY),
                tube(Fraction.SPERM_RICH, 3, SemenColour.TRANSLUCENT)),
            PARAMETERS);
    assertThat(inHand.sperm(), is(new Span(750, 2250)));
    assertThat(inHand.usable(), is(nullValue()));
    assertThat(
        inHand.missing().stream().map(Sentence::toString).toList(),
        contains("progressive motility", "normal forms"));
  }

  @Test
  void clearFluidIsNotGuessedAt() {
    SemenInHand inHand =
        Reckoning.of(
            ejaculate(null, 70.0, 75.0, tube(Fraction.WHOLE, 2, SemenColour.CLEAR)), PARAMETERS);
    assertThat(inHand.sperm(), is(nullValue()));
    assertThat(inHand.missing().get(0).toString(), containsString("must be counted"));
    assertThat(DoseCount.of(inHand, PARAMETERS), is(List.of()));
  }

  @Test
  void aTubeThatBearsNoSpermIsNone() {
    SemenInHand inHand =
        Reckoning.of(
            ejaculate(300.0, 70.0, 75.0, tube(Fraction.PROSTATIC, 8, SemenColour.CLEAR)),
            PARAMETERS);
    assertThat(inHand.usable(), is(nullValue()));
    assertThat(inHand.volumeMl(), is(nullValue()));
  }

  /** A count of none is a count: no usable sperm, no dose. */
  @Test
  void noneIsANumber() {
    SemenInHand inHand =
        Reckoning.of(
            ejaculate(0.0, 0.0, 0.0, tube(Fraction.WHOLE, 2, SemenColour.CLEAR)), PARAMETERS);
    assertThat(inHand.usable(), is(Span.of(0)));
    assertThat(DoseCount.of(inHand, PARAMETERS).get(0).shortMillion(), is(100.0));
  }

  /**
   * 2 straws × 60 million = 120 million; × 0.30 × 0.80 = 28.8 million usable, 14.4 in one straw.
   * 100 ÷ 14.4 = 6.94: one dose takes 7 straws; what there is lacks 71.2 million.
   */
  @Test
  void twoThinStraws() {
    SemenInHand inHand = Reckoning.of(straws(2, 60, 30, 80), PARAMETERS);
    assertThat(inHand.usable(), is(Span.of(28.8)));
    assertThat(inHand.usablePerUnit(), is(Optional.of(Span.of(14.4))));
    assertThat(
        DoseCount.of(inHand, PARAMETERS),
        contains(new DosesMade(Route.TRANSCERVICAL, 100, 150, 0, 0, 0, 0, 71.2, 7)));
    assertThat(inHand.dose(1), is(Optional.of(new Dose(1.2e8, 30.0, 80.0))));
  }

  /**
   * 10 straws × 80 million × 0.50 × 0.80 = 320 million: 3 doses of 100; a dose takes 4 straws of
   * 32.
   */
  @Test
  void strawsThatMakeThreeDoses() {
    DosesMade uterus =
        DoseCount.of(Reckoning.of(straws(10, 80, 50, 80), PARAMETERS), PARAMETERS).get(0);
    assertThat(
        List.of(uterus.least(), uterus.targetLeast(), uterus.unitsForOne()), contains(3, 2, 4));
  }

  /**
   * 4 straws × 50 million × 0.625 × 0.8 = 100 million: exactly a dose, in spite of binary
   * fractions.
   */
  @Test
  void exactlyTheFloorIsADose() {
    SemenInHand inHand = Reckoning.of(straws(4, 50, 62.5, 80), PARAMETERS);
    DosesMade uterus = DoseCount.of(inHand, PARAMETERS).get(0);
    assertThat(uterus.least(), is(1));
    assertThat(uterus.unitsForOne(), is(4));
    // 1,000 million × 0.7 × 0.1 × … would do the same damage: 0.7 × 0.1 is 0.06999… in binary
    assertThat(Span.of(1000).percent(70).percent(10).wholeAtLeast(70), is(1));
  }

  /** As sent: 300 million × 0.40 × 0.60 = 72 million, 28 below the floor for the uterus. */
  @Test
  void aPoorArrival() {
    SemenInHand inHand =
        Reckoning.of(new Arrival(null, null, null, null, null, 300.0, 40.0, 60.0), PARAMETERS);
    assertThat(inHand.usable(), is(Span.of(72)));
    assertThat(DoseCount.of(inHand, PARAMETERS).get(0).shortMillion(), is(28.0));
  }

  /** A count here goes before the sender's: 10 mL × 28 million/mL = 280, not 310 million. */
  @Test
  void aCountGoesBeforeWhatWasSent() {
    Arrival arrival = new Arrival(null, null, null, 10.0, 28.0, 310.0, 70.0, 80.0);
    assertThat(Reckoning.of(arrival, PARAMETERS).usable(), is(Span.of(156.8)));
  }
}
