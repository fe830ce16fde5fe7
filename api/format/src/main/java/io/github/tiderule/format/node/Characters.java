package io.github.tiderule.format.node;

import java.util.Locale;
import java.util.OptionalInt;

/**
 * Which characters a name may hold. Control and direction characters can make a terminal or a page
 * show something other than what was written.
 */
public final class Characters {

  private static final int ZERO_WIDTH_NON_JOINER = 0x200C;
  private static final int ZERO_WIDTH_JOINER = 0x200D;

  private Characters() {}

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

  /**
   * A text in which every character that does not show as itself is written out, such as {@code
   * <U+202E>}; ends of lines and tabulators stay.
   */
  public static String visible(String text) {
    if (firstUnsafe(text).isEmpty()) {
      return text;
    }
    StringBuilder shown = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); ) {
      int character = text.codePointAt(i);
      boolean layout = character == '\n' || character == '\t' || text.startsWith("\r\n", i);
      if (layout || isSafe(character)) {
        shown.appendCodePoint(character);
      } else {
        shown.append(name(character));
      }
      i += Character.charCount(character);
    }
    return shown.toString();
  }

  /** As in {@code <U+202E>}. */
  static String name(int character) {
    return String.format(Locale.ROOT, "<U+%04X>", character);
  }

  /** The first character of a text that does not show as itself. */
  static OptionalInt firstUnsafe(String text) {
    return text.codePoints().filter(character -> !isSafe(character)).findFirst();
  }
}
