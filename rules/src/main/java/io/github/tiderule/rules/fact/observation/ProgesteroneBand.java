package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.assay.Unit;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * The band a semi-quantitative kit showed.
 *
 * @param low lower edge of the band in the stated unit, 0–10 000, or absent for the lowest band
 * @param high upper edge of the band in the stated unit, above {@code low}, or absent for the
 *     highest band; never both absent
 * @param statedUnit missing when nobody said it
 */
public record ProgesteroneBand(
    String id, Instant at, @Nullable Double low, @Nullable Double high, @Nullable Unit statedUnit)
    implements Observation {

  /**
   * The lowest band.
   *
   * @param high its upper edge, in {@code unit}, above 0 and at most 10 000
   */
  public static ProgesteroneBand below(double high, Unit unit, Instant at) {
    return new ProgesteroneBand(UNNAMED, at, null, high, unit);
  }

  /**
   * A band between two others.
   *
   * @param low its lower edge, in {@code unit}, from 0
   * @param high its upper edge, in {@code unit}, above {@code low} and at most 10 000
   */
  public static ProgesteroneBand between(double low, double high, Unit unit, Instant at) {
    return new ProgesteroneBand(UNNAMED, at, low, high, unit);
  }

  /**
   * The highest band.
   *
   * @param low its lower edge, in {@code unit}, 0–10 000
   */
  public static ProgesteroneBand above(double low, Unit unit, Instant at) {
    return new ProgesteroneBand(UNNAMED, at, low, null, unit);
  }

  /** The same band of a kit that does not say its unit: it is held and asked about. */
  public ProgesteroneBand withoutUnit() {
    return new ProgesteroneBand(id, at, low, high, null);
  }

  /** The lower edge in ng/mL, or not-a-number when it or its unit is missing. */
  public double lowNgPerMl() {
    return low == null || statedUnit == null ? Double.NaN : statedUnit.toNgPerMl(low);
  }

  /** The upper edge in ng/mL, or not-a-number when it or its unit is missing. */
  public double highNgPerMl() {
    return high == null || statedUnit == null ? Double.NaN : statedUnit.toNgPerMl(high);
  }

  @Override
  public ProgesteroneBand withId(String id) {
    return new ProgesteroneBand(id, at, low, high, statedUnit);
  }
}
