package io.github.tiderule.format.json;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as documents write them. */
final class Figures {

  /** Far finer than any figure written, and far coarser than the noise of a computation. */
  private static final int NOISE_DECIMALS = 9;

  private Figures() {}

  /**
   * Rounds to some decimals, half away from zero. Noise in the last digits of a double is taken off
   * first, so that 0.12345 and 0.12344999999999999 give one figure.
   *
   * @throws IllegalArgumentException if the value is not finite
   */
  static BigDecimal rounded(double value, int decimals) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a figure is not finite: " + value);
    }
    BigDecimal figure =
        BigDecimal.valueOf(value)
            .setScale(NOISE_DECIMALS, RoundingMode.HALF_UP)
            .setScale(decimals, RoundingMode.HALF_UP)
            .stripTrailingZeros();
    return figure.scale() < 0 ? figure.setScale(0) : figure;
  }
}
