package io.github.tiderule.format.node;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers as they are written in a document, and as people write them where they should not. */
final class Numerals {

  private static final Pattern BY_HAND =
      Pattern.compile("([<>]?)\\s*(-?\\d{1,9})(?:([.,])(\\d{1,9}))?\\s*(\\D{0,12})");

  private Numerals() {}

  /** The number written; empty unless it is finite. Zero has no sign. */
  static OptionalDouble finite(String written) {
    try {
      double value = Double.parseDouble(written);
      return Double.isFinite(value) ? OptionalDouble.of(value + 0.0) : OptionalDouble.empty();
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  /** What a text that stands where a number should may have meant. */
  static Optional<String> meant(String text) {
    Matcher matcher = BY_HAND.matcher(text.strip());
    if (!matcher.matches()) {
      return Optional.empty();
    }
    String fraction = matcher.group(4) == null ? "" : matcher.group(4);
    String number = matcher.group(2) + (fraction.isEmpty() ? "" : "." + fraction);
    if (!matcher.group(1).isEmpty()) {
      String comparator = Shown.quoted(matcher.group(1));
      return Optional.of("Maybe " + number + ", with the comparator " + comparator + "?");
    }
    if (",".equals(matcher.group(3)) && fraction.length() == 3) {
      return Optional.of("Maybe " + number + ", or " + matcher.group(2) + fraction + "?");
    }
    String rest = matcher.group(5).isEmpty() ? "" : ", with the unit in a field of its own";
    return Optional.of("Maybe " + number + ", without quotes" + rest + "?");
  }
}
