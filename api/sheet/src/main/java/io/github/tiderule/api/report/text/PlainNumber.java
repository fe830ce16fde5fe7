package io.github.tiderule.api.report.text;

import java.math.BigDecimal;

/** A number without exponent or idle zeros. */
public final class PlainNumber {

  private PlainNumber() {}

  /** As in {@code 0.25}; a whole number has no point. */
  public static String of(double value) {
    BigDecimal number = BigDecimal.valueOf(value).stripTrailingZeros();
    return number.scale() < 0 ? number.setScale(0).toPlainString() : number.toPlainString();
  }
}
