package io.github.tiderule.engine.advice;

/**
 * One line of reckoning.
 *
 * @param what what is reckoned
 * @param working how, with the numbers and units put in
 * @param most the same as {@code least} unless something was judged from the look
 * @param unit {@code million}, {@code mL}, {@code million/mL}
 */
public record Amount(String what, String working, double least, double most, String unit) {}
