package io.github.tiderule.format.node;

/** Values of a document as messages show them: short, and without a character that could act. */
public final class Shown {

  private static final int LONGEST = 60;

  private Shown() {}

  /** A value as a message shows it. */
  public static String of(Node node) {
    if (node instanceof Node.Text text) {
      return quoted(text.value());
    }
    if (node instanceof Node.Digits digits) {
      return shortened(digits.written());
    }
    if (node instanceof Node.Flag flag) {
      return Boolean.toString(flag.value());
    }
    return node.typeName();
  }

  /** A text in quotes. */
  public static String quoted(String text) {
    return '"' + shortened(text) + '"';
  }

  private static String shortened(String text) {
    StringBuilder shown = new StringBuilder();
    int count = 0;
    for (int i = 0; i < text.length(); ) {
      if (count == LONGEST) {
        return shown.append('…').toString();
      }
      int character = text.codePointAt(i);
      if (Characters.isSafe(character)) {
        shown.appendCodePoint(character);
      } else {
        shown.append(Characters.name(character));
      }
      i += Character.charCount(character);
      count++;
    }
    return shown.toString();
  }
}
