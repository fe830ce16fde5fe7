package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/** What a value would mean in one unit. */
public record PossibleReading(Unit unit, Sentence meaning) {

  /** What {@code value} would mean if it were in {@code unit}. */
  public static PossibleReading of(double value, Unit unit) {
    return new PossibleReading(unit, Sentence.of("would be {}", Part.both(unit.toNgPerMl(value))));
  }

  /** What {@code value} would mean in either unit of the trade. */
  public static List<PossibleReading> both(double value) {
    return List.of(of(value, Unit.NG_PER_ML), of(value, Unit.NMOL_PER_L));
  }
}
