package io.github.tiderule.rules.sentence;

import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.assay.Unit;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/**
 * How a number is told: changed into another unit, then written. Forms are joined by colons in a
 * place of a template.
 *
 * <p>Changes of unit: {@code million} (of units), {@code percent} (of a share), {@code rest} (what
 * a share leaves of one), {@code days} and {@code weeks} and {@code minutes} (of hours), {@code
 * weeks-of-days}, {@code months-of-days}, {@code hours-of-days}, {@code nmol} (of ng/mL), {@code
 * fahrenheit} (of °C), {@code less-one}, {@code plus-one}, {@code negative}. Ways of writing:
 * {@code words} (one to twelve), {@code level} (as a laboratory prints it), {@code whole}, {@code
 * tenths} (at most one decimal), and a pattern with a bar, {@code one day|# days}, for one and for
 * any other number. Without a way of writing a number has at most two decimals.
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
          Map.entry("negative", value -> -value));

  private static final List<String> WORDS =
      List.of(
          "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "eleven", "twelve");

  private static final String BAR = "|";

  private NumberForm() {}

  /**
   * Whether a form is known.
   *
   * @param form one form, without colons
   */
  static boolean isKnown(String form) {
    return CHANGES.containsKey(form)
        || List.of("words", "level", "whole", "tenths").contains(form)
        || form.contains(BAR);
  }

  /** A number in some forms, in English. */
  static String write(double value, List<String> forms) {
    double changed = value;
    String written = "";
    boolean spelt = false;
    boolean level = false;
    boolean whole = false;
    for (String form : forms) {
      DoubleUnaryOperator change = CHANGES.get(form);
      if (change != null) {
        changed = change.applyAsDouble(changed);
      } else {
        spelt |= form.equals("words");
        level |= form.equals("level");
        whole |= form.equals("whole");
      }
    }
    changed = Digits.significant(changed, 12);
    int small = (int) changed;
    if (spelt && small == changed && small >= 0 && small < WORDS.size()) {
      written = WORDS.get(small);
    } else if (level) {
      written = Digits.concentration(changed);
    } else if (forms.contains("tenths")) {
      written = Digits.plain(changed);
    } else if (whole) {
      written = Digits.grouped(changed, 0);
    } else {
      written = Digits.grouped(changed, 2);
    }
    for (String form : forms) {
      int bar = form.indexOf(BAR);
      if (bar >= 0) {
        String pattern = changed == 1 ? form.substring(0, bar) : form.substring(bar + 1);
        written = pattern.replace("#", written);
      }
    }
    return written;
  }
}
