package io.github.tiderule.format.node;

import io.github.tiderule.engine.validation.Legibility;

/** Values of a document as messages show them: short, and without a character that could act. */
public final class Shown {

  private Shown() {}

  /** A value as a message shows it. */
  public static String of(Node node) {
    if (node instanceof Node.Text text) {
      return quoted(text.value());
    }
    if (node instanceof Node.Digits digits) {
      return Legibility.shortened(digits.written());
    }
    if (node instanceof Node.Flag flag) {
      return Boolean.toString(flag.value());
    }
    return node.typeName();
  }

  /** A text in quotes. */
  public static String quoted(String text) {
    return Legibility.quoted(text);
  }
}
