package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a value would mean in one unit.
 *
 * @param value the number that was meant, where it is another than was entered
 */
public record PossibleReading(Unit unit, @Nullable Double value, Sentence meaning) {

  /** What {@code value} would mean if it were in {@code unit}. */
  public static PossibleReading of(double value, Unit unit) {
    return new PossibleReading(
        unit, null, Sentence.of("would be {}", Part.both(unit.toNgPerMl(value))));
  }

  /** What {@code value} would mean in either unit of the trade. */
  public static List<PossibleReading> both(double value) {
    return List.of(of(value, Unit.NG_PER_ML), of(value, Unit.NMOL_PER_L));
  }

  /**
   * What {@code value} would mean in either unit, and with its point moved.
   *
   * @param meant the number with the point where it may belong
   * @param unit the unit it was said to be in
   */
  public static List<PossibleReading> moved(double value, double meant, Unit unit) {
    double number = Digits.significant(meant, 12);
    PossibleReading slip =
        new PossibleReading(
            unit,
            number,
            Sentence.of(
                "if {} was meant, would be {}",
                Part.figure(number),
                Part.both(unit.toNgPerMl(number))));
    return Stream.concat(Stream.of(slip), both(value).stream()).toList();
  }
}
