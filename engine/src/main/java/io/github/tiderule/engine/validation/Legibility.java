package io.github.tiderule.engine.validation;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Texts that show themselves. Control and direction characters can make a terminal or a page show
 * something other than what was written.
 */
public final class Legibility {

  private static final int ZERO_WIDTH_NON_JOINER = 0x200C;
  private static final int ZERO_WIDTH_JOINER = 0x200D;
  private static final int LONGEST_SHOWN = 60;

  private Legibility() {}

  /** Whether a character shows as itself. Joiners do: some scripts are not written without them. */
  public static boolean isSafe(int character) {
    return switch (Character.getType(character)) {
      case Character.CONTROL,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE ->
          false;
      case Character.FORMAT -> character == ZERO_WIDTH_JOINER || character == ZERO_WIDTH_NON_JOINER;
      default -> true;
    };
  }

  /** The first character of a text that does not show as itself. */
  public static OptionalInt firstUnsafe(String text) {
    return text.codePoints().filter(character -> !isSafe(character)).findFirst();
  }

  /** As in {@code <U+202E>}. */
  public static String name(int character) {
    return String.format(Locale.ROOT, "<U+%04X>", character);
  }

  /** A text in quotes as messages show it: short, and without a character that could act. */
  public static String quoted(String text) {
    return '"' + shortened(text) + '"';
  }

  /** A text as messages show it: short, and without a character that could act. */
  public static String shortened(String text) {
    StringBuilder shown = new StringBuilder();
    int count = 0;
    for (int i = 0; i < text.length(); ) {
      if (count == LONGEST_SHOWN) {
        return shown.append('…').toString();
      }
      int character = text.codePointAt(i);
      if (isSafe(character)) {
        shown.appendCodePoint(character);
      } else {
        shown.append(name(character));
      }
      i += Character.charCount(character);
      count++;
    }
    return shown.toString();
  }

  /**
   * Why a text cannot stand in a field; empty where it can.
   *
   * @param longest how many characters it may have
   */
  public static Optional<Violation> violation(String name, String text, int longest) {
    if (text.isBlank()) {
      return Optional.of(Violation.of(name, Violation.Code.EMPTY_TEXT, text, name + " is empty"));
    }
    int length = text.codePointCount(0, text.length());
    if (length > longest) {
      return Optional.of(
          new Violation(
              name,
              Violation.Code.TOO_LONG,
              text,
              Range.of(1, longest, "characters"),
              name + " has " + length + " characters; " + longest + " are the most",
              null));
    }
    return firstUnsafe(text).stream().mapToObj(unsafe -> unsafe(name, text, unsafe)).findFirst();
  }

  private static Violation unsafe(String name, String text, int character) {
    return Violation.of(
        name,
        Violation.Code.ILLEGAL_CHARACTER,
        text,
        name
            + " holds the character U+"
            + String.format(Locale.ROOT, "%04X", character)
            + ": "
            + quoted(text));
  }
}
