package io.github.tiderule.rules.fact.semen;

import io.github.tiderule.rules.fact.Digits;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What one dose of semen holds; for chilled and frozen semen as counted after chilling or thawing.
 *
 * @param totalSperm number of sperm in the dose, motile or not, 0–10¹¹, if counted
 * @param progressivelyMotilePercent 0–100, if looked at
 * @param normalPercent 0–100, if counted
 */
public record Dose(
    @Nullable Double totalSperm,
    @Nullable Double progressivelyMotilePercent,
    @Nullable Double normalPercent) {

  /** Beyond what anybody counts, and enough that a product of round shares is round. */
  private static final int DIGITS = 12;

  /** A dose nobody has looked at. */
  public static Dose unknown() {
    return new Dose(null, null, null);
  }

  /**
   * With the count.
   *
   * @param sperm number of sperm in the dose, motile or not, 0–10¹¹
   */
  public Dose totalSperm(double sperm) {
    return new Dose(sperm, progressivelyMotilePercent, normalPercent);
  }

  /**
   * With the share that swims forward.
   *
   * @param percent 0–100
   */
  public Dose progressivelyMotilePercent(double percent) {
    return new Dose(totalSperm, percent, normalPercent);
  }

  /**
   * With the share of normal forms.
   *
   * @param percent 0–100
   */
  public Dose normalPercent(double percent) {
    return new Dose(totalSperm, progressivelyMotilePercent, percent);
  }

  /** Whether a count found nothing usable: no sperm, none that swims forward or none normal. */
  public boolean none() {
    return isZero(totalSperm) || isZero(progressivelyMotilePercent) || isZero(normalPercent);
  }

  private static boolean isZero(@Nullable Double counted) {
    return counted != null && counted == 0;
  }

  /**
   * Usable sperm: total × share progressively motile × share normal (thomas-2013); empty unless all
   * three are known.
   */
  public OptionalDouble usable() {
    if (totalSperm == null || progressivelyMotilePercent == null || normalPercent == null) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        Digits.significant(
            totalSperm * (progressivelyMotilePercent / 100) * (normalPercent / 100), DIGITS));
  }
}
