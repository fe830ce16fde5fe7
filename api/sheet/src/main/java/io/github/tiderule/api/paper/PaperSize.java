package io.github.tiderule.api.paper;

import java.util.Arrays;
import java.util.Optional;

/** The sheets people print on. */
public enum PaperSize {
  A4("a4", "210mm 297mm"),
  LETTER("letter", "8.5in 11in");

  private final String word;
  private final String css;

  PaperSize(String word, String css) {
    this.word = word;
    this.css = css;
  }

  /** The size of a word, if it is one. */
  public static Optional<PaperSize> of(String word) {
    return Arrays.stream(values()).filter(size -> size.word.equals(word)).findFirst();
  }

  /** What it is called on the command line. */
  public String word() {
    return word;
  }

  /** Its size as style sheets write it. */
  String css() {
    return css;
  }
}
