package io.github.tiderule.api.report;

import java.math.BigDecimal;

/** A number without exponent or idle zeros. */
final class PlainNumber {

  private PlainNumber() {}

  static String of(double value) {
    BigDecimal number = BigDecimal.valueOf(value).stripTrailingZeros();
    return number.scale() < 0 ? number.setScale(0).toPlainString() : number.toPlainString();
  }
}
