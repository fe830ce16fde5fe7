package io.github.tiderule.api.paper;

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

  /** What it is called on the command line. */
  public String word() {
    return word;
  }

  /** Its size as style sheets write it. */
  String css() {
    return css;
  }
}
