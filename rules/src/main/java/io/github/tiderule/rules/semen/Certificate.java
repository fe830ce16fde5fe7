package io.github.tiderule.rules.semen;

import org.jspecify.annotations.Nullable;

/**
 * What the freezing centre's certificate says of the frozen semen there is.
 *
 * @param units how many straws, vials or pellets there are, 1–200
 * @param spermPerUnitMillion million sperm in one of them, motile or not, 0–20 000, if known
 * @param volumeMlPerUnit in millilitres, above 0, up to 200, if known
 * @param progressivelyMotilePercent after thawing, 0–100, if known
 * @param normalPercent after thawing, 0–100, if known
 */
public record Certificate(
    FrozenUnit unit,
    int units,
    @Nullable Double spermPerUnitMillion,
    @Nullable Double volumeMlPerUnit,
    @Nullable Double progressivelyMotilePercent,
    @Nullable Double normalPercent) {

  /**
   * So many straws.
   *
   * @param units 1–200
   */
  public static Certificate of(int units) {
    return new Certificate(FrozenUnit.STRAW, units, null, null, null, null);
  }

  /** Of vials or pellets. */
  public Certificate unit(FrozenUnit keptIn) {
    return new Certificate(
        keptIn,
        units,
        spermPerUnitMillion,
        volumeMlPerUnit,
        progressivelyMotilePercent,
        normalPercent);
  }

  /**
   * With the sperm in one of them.
   *
   * @param million motile or not, 0–20 000
   */
  public Certificate spermPerUnitMillion(double million) {
    return new Certificate(
        unit, units, million, volumeMlPerUnit, progressivelyMotilePercent, normalPercent);
  }

  /**
   * With the volume of one of them.
   *
   * @param ml millilitres, above 0, up to 200
   */
  public Certificate volumeMlPerUnit(double ml) {
    return new Certificate(
        unit, units, spermPerUnitMillion, ml, progressivelyMotilePercent, normalPercent);
  }

  /**
   * With the share that swims forward after thawing.
   *
   * @param percent 0–100
   */
  public Certificate progressivelyMotilePercent(double percent) {
    return new Certificate(
        unit, units, spermPerUnitMillion, volumeMlPerUnit, percent, normalPercent);
  }

  /**
   * With the share of normal forms after thawing.
   *
   * @param percent 0–100
   */
  public Certificate normalPercent(double percent) {
    return new Certificate(
        unit, units, spermPerUnitMillion, volumeMlPerUnit, progressivelyMotilePercent, percent);
  }
}
