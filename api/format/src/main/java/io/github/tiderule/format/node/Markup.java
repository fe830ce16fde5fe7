package io.github.tiderule.format.node;

/** Texts as XML and HTML hold them. */
public final class Markup {

  private Markup() {}

  /**
   * A text that no markup can be made of, fit for content and for attributes. A character that does
   * not show as itself, or that XML may not hold, becomes a space.
   */
  public static String escaped(String words) {
    StringBuilder safe = new StringBuilder(words.length());
    words
        .codePoints()
        .forEach(
            character -> {
              switch (character) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(shows(character) ? character : ' ');
              }
            });
    return safe.toString();
  }

  private static boolean shows(int character) {
    // the last two of every plane are no characters, and no XML may hold U+FFFE
    return Characters.isSafe(character) && (character & 0xFFFE) != 0xFFFE;
  }
}
