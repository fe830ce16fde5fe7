package io.github.tiderule.format.node;

import io.github.tiderule.engine.validation.Legibility;

/** Texts made harmless: what could act on a terminal or a page is written out. */
public final class Characters {

  private Characters() {}

  /**
   * A text in which every character that does not show as itself is written out, such as {@code
   * <U+202E>}; ends of lines and tabulators stay.
   */
  public static String visible(String text) {
    if (Legibility.firstUnsafe(text).isEmpty()) {
      return text;
    }
    StringBuilder shown = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); ) {
      int character = text.codePointAt(i);
      boolean layout = character == '\n' || character == '\t' || text.startsWith("\r\n", i);
      if (layout || Legibility.isSafe(character)) {
        shown.appendCodePoint(character);
      } else {
        shown.append(Legibility.name(character));
      }
      i += Character.charCount(character);
    }
    return shown.toString();
  }
}
