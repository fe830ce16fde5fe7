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
 * fahrenheit} (of °C), {@code less-one}, {@code plus-one}, {@code plus-two}, {@code less-half},
 * {@code plus-half}, {@code less-quarter}, {@code plus-quarter}, {@code round} (to the nearest
 * whole number), {@code rounded} (the same, half up), {@code negative}, {@code round-months} (of
 * days, thirty to the month), {@code years-of-days} (365 to the year), {@code years-of-months}.
 * Ways of writing: {@code words} (to twenty, with a half), {@code level} (as a laboratory prints
 * it), {@code whole}, {@code measured} (three significant digits, at most one decimal; {@code less
 * than 0.1} below that), {@code tenths} (at most one decimal), {@code thousandths} (at most three,
 * thousands not set apart), {@code span} (days as a length of time: {@code half a day}, {@code two
 * weeks}), {@code times} ({@code twice}, {@code 3 times}), {@code part} (a share as {@code half},
 * {@code a third}, {@code a quarter}, {@code a fifth} or {@code a tenth}; else percent), {@code
 * part-of} (one part of so many: {@code half}, {@code a third of}), and a pattern with a bar,
 * {@code one day|# days}, for one and for any other number, or with two bars, for none too; {@code
 * capital} begins it with a capital. Without a way of writing a number has at most two decimals.
 *
 * <p>{@code of} says that an observation stands behind the noun for it; it changes no number.
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
          Map.entry("plus-two", value -> value + 2),
          Map.entry("less-half", value -> value - 0.5),
          Map.entry("plus-half", value -> value + 0.5),
          Map.entry("less-quarter", value -> value - 0.25),
          Map.entry("plus-quarter", value -> value + 0.25),
          Map.entry("round", Math::rint),
          Map.entry("rounded", value -> Math.floor(value + 0.5)),
          Map.entry("round-months", days -> days / 30),
          Map.entry("years-of-days", days -> days / 365),
          Map.entry("years-of-months", months -> months / 12),
          Map.entry("negative", value -> -value));

  private static final List<String> WORDS =
      List.of(
          "no",
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen",
          "twenty");

  private static final Map<Double, String> PARTS_OF =
      Map.of(1.0, "all of", 2.0, "half", 3.0, "a third of", 4.0, "a quarter of");

  private static final Map<Double, String> PARTS =
      Map.of(0.5, "half", 1.0 / 3, "a third", 0.25, "a quarter", 0.2, "a fifth", 0.1, "a tenth");

  /** Lengths of time are in words to twelve. */
  private static final double LONGEST_SPAN = 12;

  private static final double LEAST_MEASURED = 0.05;
  private static final int MEASURED_DIGITS = 3;

  private static final List<String> WAYS =
      List.of(
          "words",
          "level",
          "whole",
          "measured",
          "tenths",
          "thousandths",
          "span",
          "times",
          "part",
          "part-of",
          "capital",
          "of");

  private static final String BAR = "|";

  private NumberForm() {}

  /**
   * Whether a form is known.
   *
   * @param form one form, without colons
   */
  static boolean isKnown(String form) {
    return CHANGES.containsKey(form) || WAYS.contains(form) || form.contains(BAR);
  }

  /** A number in some forms, its words in English. */
  static String write(double value, List<String> forms, Marks marks) {
    double changed = value;
    for (String form : forms) {
      DoubleUnaryOperator change = CHANGES.get(form);
      if (change != null) {
        changed = change.applyAsDouble(changed);
      }
    }
    changed = Digits.significant(changed, 12);
    String written = written(changed, forms, marks);
    for (String form : forms) {
      if (form.contains(BAR)) {
        written = pattern(changed, form).replace("#", written);
      }
    }
    return forms.contains("capital")
        ? written.substring(0, 1).toUpperCase(Locale.ROOT) + written.substring(1)
        : written;
  }

  private static String written(double value, List<String> forms, Marks marks) {
    if (forms.contains("span")) {
      return span(value, marks);
    }
    if (forms.contains("part")) {
      return part(value, marks);
    }
    if (forms.contains("part-of")) {
      return PARTS_OF.getOrDefault(value, grouped(100 / value, 0, marks) + " % of");
    }
    if (forms.contains("times")) {
      return value == 2 ? "twice" : number(value, forms, marks) + " times";
    }
    return number(value, forms, marks);
  }

  private static String number(double value, List<String> forms, Marks marks) {
    if (forms.contains("words")) {
      return words(value, marks);
    }
    if (forms.contains("level")) {
      return marks.of(Digits.concentration(value));
    }
    if (forms.contains("measured")) {
      return value > 0 && value < LEAST_MEASURED
          ? "less than " + marks.of("0.1")
          : marks.of(Digits.plain(Digits.significant(value, MEASURED_DIGITS)));
    }
    if (forms.contains("thousandths")) {
      return marks.of(Digits.exact(value));
    }
    if (forms.contains("tenths")) {
      return marks.of(Digits.plain(value));
    }
    return grouped(value, forms.contains("whole") ? 0 : 2, marks);
  }

  /** In words where there are words for it, else in digits. */
  private static String words(double value, Marks marks) {
    int whole = (int) Math.floor(value);
    if (whole < 0 || whole >= WORDS.size() || (value != whole && value != whole + 0.5)) {
      return grouped(value, 2, marks);
    }
    if (value == whole) {
      return WORDS.get(whole);
    }
    return whole == 0 ? "half" : WORDS.get(whole) + " and a half";
  }

  private static String part(double share, Marks marks) {
    return PARTS.entrySet().stream()
        .filter(part -> Math.abs(part.getKey() - share) < 1e-9)
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(grouped(share * 100, 2, marks) + " %");
  }

  private static String grouped(double value, int decimals, Marks marks) {
    return marks.of(Digits.grouped(value, decimals));
  }

  private static String few(double value, Marks marks) {
    return value > LONGEST_SPAN ? grouped(value, 2, marks) : words(value, marks);
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

  private static String span(double days, Marks marks) {
    if (days == 0.5) {
      return "half a day";
    }
    if (days == 1.5) {
      return "a day and a half";
    }
    if (days >= 7 && days % 7 == 0) {
      return days == 7 ? "a week" : few(days / 7, marks) + " weeks";
    }
    if (days * 2 % 1 != 0) {
      return grouped(days * 24, 2, marks) + " hours";
    }
    return days == 1 ? "a day" : few(days, marks) + " days";
  }
}
