package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.semen.SemenColour;
import org.jspecify.annotations.Nullable;

/**
 * One tube of an ejaculate.
 *
 * @param volumeMl in millilitres, above 0, up to 200, if measured
 * @param appearance what it looks like, if somebody looked
 */
public record EjaculateFraction(
    Fraction fraction, @Nullable Double volumeMl, @Nullable SemenColour appearance) {

  /** A tube nobody has measured or looked at. */
  public static EjaculateFraction of(Fraction fraction) {
    return new EjaculateFraction(fraction, null, null);
  }

  /**
   * With its volume.
   *
   * @param ml millilitres, above 0, up to 200
   */
  public EjaculateFraction volumeMl(double ml) {
    return new EjaculateFraction(fraction, ml, appearance);
  }

  /** With what it looks like. */
  public EjaculateFraction appearance(SemenColour colour) {
    return new EjaculateFraction(fraction, volumeMl, colour);
  }
}
