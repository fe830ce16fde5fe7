package io.github.tiderule.cases.referee;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;

import io.github.tiderule.rules.fact.assay.Unit;
import javax.measure.quantity.AmountOfSubstance;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import systems.uom.ucum.UCUM;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.quantity.Quantities;

/**
 * Units against a library of the Unified Code for Units of Measure. The molar mass is the only
 * number of ours: 314.46 g/mol (from memory).
 */
class UnitRefereeTest {

  private static final double MOLAR_MASS_G_PER_MOL = 314.46;

  /** ng/mL, by way of grams, moles and litres as the library converts them, to nmol/L. */
  private static double nmolPerLitre(double ngPerMl) {
    javax.measure.Unit<Mass> nanogram = UCUM.GRAM.divide(1e9);
    javax.measure.Unit<Volume> millilitre = UCUM.LITER.divide(1e3);
    javax.measure.Unit<AmountOfSubstance> nanomole = UCUM.MOLE.divide(1e9);
    double grams = Quantities.getQuantity(ngPerMl, nanogram).to(UCUM.GRAM).getValue().doubleValue();
    double litres = Quantities.getQuantity(1, millilitre).to(UCUM.LITER).getValue().doubleValue();
    double moles = grams / MOLAR_MASS_G_PER_MOL;
    return Quantities.getQuantity(moles, UCUM.MOLE).to(nanomole).getValue().doubleValue() / litres;
  }

  @ParameterizedTest
  @CsvSource({"0.2", "1", "3.18", "5", "31.4", "100"})
  void molarConcentrationsAgree(double ngPerMl) {
    double expected = nmolPerLitre(ngPerMl);
    assertThat(Unit.NMOL_PER_L.fromNgPerMl(ngPerMl), closeTo(expected, expected * 1e-3));
    assertThat(Unit.NMOL_PER_L.toNgPerMl(expected), closeTo(ngPerMl, ngPerMl * 1e-3));
  }

  @ParameterizedTest
  @CsvSource({"0.2", "1", "7.5"})
  void aMicrogramPerLitreIsANanogramPerMillilitre(double ngPerMl) {
    javax.measure.Unit<?> ours = UCUM.GRAM.divide(1e9).divide(UCUM.LITER.divide(1e3));
    javax.measure.Unit<?> other = UCUM.GRAM.divide(1e6).divide(UCUM.LITER);
    double factor = factor((AbstractUnit<?>) ours, (AbstractUnit<?>) other);
    assertThat(Unit.UG_PER_L.toNgPerMl(ngPerMl), closeTo(ngPerMl * factor, 1e-9));
  }

  /** 5 ng/mL would be 500 ng/dL: the slip that a report's words betray. */
  @ParameterizedTest
  @CsvSource({"5, 500", "0.052, 5.2"})
  void aDecilitreIsAHundredMillilitres(double ngPerMl, double ngPerDl) {
    javax.measure.Unit<?> ours = UCUM.GRAM.divide(1e9).divide(UCUM.LITER.divide(1e3));
    javax.measure.Unit<?> slip = UCUM.GRAM.divide(1e9).divide(UCUM.LITER.divide(10));
    double factor = factor((AbstractUnit<?>) ours, (AbstractUnit<?>) slip);
    assertThat(ngPerMl * factor, closeTo(ngPerDl, 1e-9));
  }

  private static double factor(AbstractUnit<?> from, AbstractUnit<?> to) {
    try {
      return from.getConverterToAny(to).convert(1.0);
    } catch (javax.measure.IncommensurableException e) {
      throw new AssertionError(e);
    }
  }
}
