package io.github.tiderule.rules.fact;

import io.github.tiderule.rules.fact.assay.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as people write them. */
public final class Digits {

  /** Six decimals are told apart at once; the rest takes the long way. */
  private static final double MILLION = 1e6;

  /** A double holds every decimal number of so many digits apart from its neighbours. */
  private static final int EXACT_DIGITS = 15;

  private Digits() {}

  /** Rounds to so many significant digits, half up; not-a-number and infinities pass unchanged. */
  public static double significant(double value, int digits) {
    if (!Double.isFinite(value)) {
      return value;
    }
    double scaled = Math.rint(value * MILLION);
    if (digits <= EXACT_DIGITS
        && Math.abs(scaled) < Math.pow(10, digits)
        && scaled / MILLION == value) {
      // the number is itself the nearest to one of so few digits, and rounding would leave it
      return value;
    }
    return new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP)).doubleValue();
  }

  /** A concentration as a laboratory would print it: two decimals below 10, one from there on. */
  public static String concentration(double value) {
    int places = value < 10 ? 2 : 1;
    BigDecimal rounded =
        new BigDecimal(significant(value, 12)).setScale(places, RoundingMode.HALF_UP);
    BigDecimal plain = rounded.stripTrailingZeros();
    return (plain.scale() < 1 ? plain.setScale(1) : plain).toPlainString();
  }

  /** A number with at most one decimal, half up, and none where it is whole: {@code 28.8}. */
  public static String plain(double value) {
    BigDecimal rounded = new BigDecimal(significant(value, 12)).setScale(1, RoundingMode.HALF_UP);
    BigDecimal bare = rounded.stripTrailingZeros();
    return (bare.scale() < 0 ? bare.setScale(0) : bare).toPlainString();
  }

  /** A number with at most three decimals, half up, and no marks between thousands. */
  public static String exact(double value) {
    BigDecimal bare =
        BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP).stripTrailingZeros();
    return bare.toPlainString();
  }

  /**
   * A number with at most so many decimals, half up, and commas between thousands: {@code 1,500}.
   */
  public static String grouped(double value, int decimals) {
    BigDecimal rounded =
        new BigDecimal(significant(value, 12)).setScale(decimals, RoundingMode.HALF_UP);
    BigDecimal bare = rounded.stripTrailingZeros();
    return String.format(
        Locale.ROOT, "%,." + Math.max(bare.scale(), 0) + "f", bare.scale() < 0 ? rounded : bare);
  }

  /** A progesterone concentration in both units: {@code 2.1 ng/mL (6.68 nmol/L)}. */
  public static String bothUnits(double ngPerMl) {
    return concentration(ngPerMl)
        + " ng/mL ("
        + concentration(Unit.NMOL_PER_L.fromNgPerMl(ngPerMl))
        + " nmol/L)";
  }
}
