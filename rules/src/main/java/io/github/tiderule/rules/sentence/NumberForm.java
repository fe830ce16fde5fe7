package io.github.tiderule.rules.sentence;

import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.assay.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/**
 * How a number is told: changed into another unit, then written. Forms are joined by colons in a
 * place of a template.
 *
 * <p>Changes of unit: {@code million} (of units), {@code percent} (of a share), {@code rest} (what
 * a share leaves of one), {@code days} and {@code weeks} and {@code minutes} (of hours), {@code
 * weeks-of-days}, {@code months-of-days}, {@code hours-of-days}, {@code nmol} (of ng/mL), {@code
 * fahrenheit} (of °C), {@code less-one}, {@code plus-one}, {@code negative}, {@code round-months}
 * (of days, thirty to the month), {@code years-of-days} (365 to the year), {@code years-of-months},
 * {@code rounded} (to a whole number, half up). Ways of writing: {@code words} (to twenty, with a
 * half), {@code part} (half, a third, a quarter, a fifth or a tenth; else percent), {@code level}
 * (as a laboratory prints it), {@code whole}, {@code tenths} (at most one decimal), and a pattern
 * with a bar, {@code one day|# days}, for one and for any other number, or with two bars, for none
 * too. {@code capital} begins a sentence. Without a way of writing a number has at most two
 * decimals.
 */
final class NumberForm {

  private static final Map<String, DoubleUnaryOperator> CHANGES =
      Map.ofEntries(
          Map.entry("million", value -> value / 1e6),
          Map.entry("percent", value -> value * 100),
          Map.entry("rest", value -> 1 - value),
          Map.entry("days", hours -> hours / 24),
          Map.entry("weeks", hours -> hours / 168),
          Map.entry("minutes", hours -> hours * 60),
          Map.entry("weeks-of-days", days -> days / 7),
          Map.entry("months-of-days", days -> days / 30.4375),
          Map.entry("hours-of-days", days -> days * 24),
          Map.entry("nmol", Unit.NMOL_PER_L::fromNgPerMl),
          Map.entry("fahrenheit", celsius -> celsius * 1.8 + 32),
          Map.entry("less-one", value -> value - 1),
          Map.entry("plus-one", value -> value + 1),
          Map.entry("negative", value -> -value),
          Map.entry("round-months", days -> days / 30),
          Map.entry("years-of-days", days -> days / 365),
          Map.entry("years-of-months", months -> months / 12),
          Map.entry("rounded", value -> Math.floor(value + 0.5)));

  private static final List<String> WORDS =
      List.of(
          "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen",
          "nineteen", "twenty");

  private static final Map<Double, String> PARTS =
      Map.of(0.5, "half", 1.0 / 3, "a third", 0.25, "a quarter", 0.2, "a fifth", 0.1, "a tenth");

  private static final String BAR = "|";

  private NumberForm() {}

  /**
   * Whether a form is known.
   *
   * @param form one form, without colons
   */
  static boolean isKnown(String form) {
    return CHANGES.containsKey(form)
        || List.of("words", "part", "level", "whole", "tenths", "capital").contains(form)
        || form.contains(BAR);
  }

  /** A number in some forms, in English. */
  static String write(double value, List<String> forms) {
    double changed = value;
    for (String form : forms) {
      changed = CHANGES.getOrDefault(form, DoubleUnaryOperator.identity()).applyAsDouble(changed);
    }
    double told = Digits.significant(changed, 12);
    String written = number(told, forms);
    for (String form : forms) {
      if (form.contains(BAR)) {
        written = pattern(told, form).replace("#", written);
      }
    }
    return forms.contains("capital")
        ? written.substring(0, 1).toUpperCase(Locale.ROOT) + written.substring(1)
        : written;
  }

  private static String number(double told, List<String> forms) {
    if (forms.contains("words")) {
      return spelt(told);
    }
    if (forms.contains("part")) {
      return part(told);
    }
    if (forms.contains("level")) {
      return Digits.concentration(told);
    }
    if (forms.contains("tenths")) {
      return Digits.plain(told);
    }
    return Digits.grouped(told, forms.contains("whole") ? 0 : 2);
  }

  /** In words where there are words for it, else in digits. */
  private static String spelt(double told) {
    int whole = (int) Math.floor(told);
    if (whole < 0 || whole >= WORDS.size() || (told != whole && told != whole + 0.5)) {
      return Digits.grouped(told, 2);
    }
    if (told == whole) {
      return WORDS.get(whole);
    }
    return whole == 0 ? "half" : WORDS.get(whole) + " and a half";
  }

  private static String part(double share) {
    return PARTS.entrySet().stream()
        .filter(part -> Math.abs(part.getKey() - share) < 1e-9)
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(Digits.grouped(share * 100, 2) + " %");
  }

  /** For one and for others, or for none, for one and for others. */
  private static String pattern(double told, String form) {
    String[] choices = form.split("\\|", -1);
    boolean withNone = choices.length > 2;
    if (withNone && told == 0) {
      return choices[0];
    }
    return choices[told == 1 ? choices.length - 2 : choices.length - 1];
  }
}
