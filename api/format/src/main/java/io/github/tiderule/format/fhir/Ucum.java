package io.github.tiderule.format.fhir;

import io.github.tiderule.rules.fact.assay.Unit;
import java.util.Map;
import java.util.Optional;

/** Codes of the Unified Code for Units of Measure, which tell capitals from small letters. */
final class Ucum {

  /** The code system. */
  static final String SYSTEM = "http://unitsofmeasure.org";

  /** Both ways to write the litre, and no others: a near miss can be a factor of a hundred. */
  private static final Map<String, Unit> UNITS =
      Map.of(
          "ng/mL", Unit.NG_PER_ML,
          "ng/ml", Unit.NG_PER_ML,
          "ug/L", Unit.UG_PER_L,
          "ug/l", Unit.UG_PER_L,
          "nmol/L", Unit.NMOL_PER_L,
          "nmol/l", Unit.NMOL_PER_L);

  private Ucum() {}

  static Optional<Unit> unit(String code) {
    return Optional.ofNullable(UNITS.get(code));
  }

  /** The code of a unit, which our own words for them happen to be. */
  static String code(Unit unit) {
    return unit.word();
  }
}
