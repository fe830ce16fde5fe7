package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.fact.Digits;

/**
 * One line of reckoning.
 *
 * @param what what is reckoned
 * @param working how, with the numbers and units put in
 * @param most the same as {@code least} unless something was judged from the look
 * @param unit {@code million}, {@code mL}, {@code million/mL}
 */
public record Amount(String what, String working, double least, double most, String unit) {

  private static final int SHOWN = 3;

  /** Its numbers in words, three significant digits: {@code 28.8}, {@code 500 to 1000}. */
  public String words() {
    return least == most ? words(least) : words(least) + " to " + words(most);
  }

  /** A number in words, three significant digits and at most one decimal. */
  public static String words(double value) {
    return value > 0 && value < 0.05
        ? "less than 0.1"
        : Digits.plain(Digits.significant(value, SHOWN));
  }
}
