package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.assay.Unit;

/** What a value would mean in one unit. */
public record PossibleReading(Unit unit, String meaning) {

  /** What {@code value} would mean if it were in {@code unit}. */
  public static PossibleReading of(double value, Unit unit) {
    return new PossibleReading(unit, "would be " + Digits.bothUnits(unit.toNgPerMl(value)));
  }
}
