package io.github.tiderule.rules.semen;

import org.jspecify.annotations.Nullable;

/**
 * What the semen is to be made into.
 *
 * @param volumeMl millilitres of one dose, above 0, up to 200, if wanted
 * @param concentrationMillionPerMl million sperm per mL, motile or not, above 0, up to 5000, if
 *     wanted
 * @param doses how many doses are to be made, 1 to 4, if wanted
 */
public record Wanted(
    @Nullable Double volumeMl,
    @Nullable Double concentrationMillionPerMl,
    @Nullable Integer doses) {

  /** Nothing in particular. */
  public static Wanted nothing() {
    return new Wanted(null, null, null);
  }

  /**
   * With the volume of one dose.
   *
   * @param ml millilitres, above 0, up to 200
   */
  public Wanted volumeMl(double ml) {
    return new Wanted(ml, concentrationMillionPerMl, doses);
  }

  /**
   * With how dense it is to be.
   *
   * @param density million sperm per mL, motile or not, above 0, up to 5000
   */
  public Wanted concentrationMillionPerMl(double density) {
    return new Wanted(volumeMl, density, doses);
  }

  /**
   * With how many doses are to be made.
   *
   * @param count 1–4
   */
  public Wanted doses(int count) {
    return new Wanted(volumeMl, concentrationMillionPerMl, count);
  }
}
