package io.github.tiderule.engine.advice;

import io.github.tiderule.rules.sentence.Sentence;

/**
 * One line of reckoning.
 *
 * @param what what is reckoned
 * @param working how, with the numbers and units put in
 * @param most the same as {@code least} unless something was judged from the look
 */
public record Amount(Sentence what, Sentence working, double least, double most, AmountUnit unit) {

  /** Its numbers, three significant digits: {@code 28.8}, {@code 500 to 1000}. */
  public Sentence figures() {
    return figures(least, most);
  }

  /** Two numbers, or one where they are the same, three significant digits. */
  public static Sentence figures(double least, double most) {
    return least == most
        ? Sentence.of("{:measured}", least)
        : Sentence.of("{:measured} to {:measured}", least, most);
  }
}
