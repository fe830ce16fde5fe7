package io.github.tiderule.api.report.text;

/** How many columns of a terminal a text takes. */
public final class Columns {

  /** First and last characters of the ranges that terminals draw two columns wide. */
  private static final int[][] WIDE = {
    {0x1100, 0x115F},
    {0x231A, 0x231B},
    {0x23E9, 0x23F3},
    {0x25FD, 0x25FE},
    {0x2614, 0x27BF},
    {0x2B1B, 0x2B55},
    {0x2E80, 0xA4CF},
    {0xA960, 0xA97F},
    {0xAC00, 0xD7A3},
    {0xF900, 0xFAFF},
    {0xFE30, 0xFE6F},
    {0xFF00, 0xFF60},
    {0xFFE0, 0xFFE6},
    {0x16FE0, 0x1B2FF},
    {0x1F000, 0x1FAFF},
    {0x20000, 0x3FFFD},
  };

  private Columns() {}

  /** Columns of a text; when in doubt, the greater number. */
  public static int of(String text) {
    return text.codePoints().map(Columns::of).sum();
  }

  private static int of(int character) {
    int type = Character.getType(character);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
      return 0;
    }
    for (int[] range : WIDE) {
      if (character >= range[0] && character <= range[1]) {
        return 2;
      }
    }
    return 1;
  }

  /** How many chars of a text fit into some columns; at least one character, so that work ends. */
  static int cut(String text, int columns) {
    int used = 0;
    int at = 0;
    while (at < text.length()) {
      int character = text.codePointAt(at);
      used += of(character);
      if (used > columns && at > 0) {
        return at;
      }
      at += Character.charCount(character);
    }
    return at;
  }

  /** A text filled up with spaces to some columns. */
  public static String padded(String text, int columns) {
    return text + " ".repeat(Math.max(0, columns - of(text)));
  }
}
