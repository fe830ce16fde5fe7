package io.github.tiderule.api.picture;

/**
 * For which width a curve is laid out. It scales to any, and its letters with it: drawn at its own
 * width they have the size of the text about it.
 */
public enum CurveSize {
  /** A phone held upright, from 320 pixels on. */
  PHONE(340, 12, 210),
  /** A screen. */
  SCREEN(760, 13, 300),
  /** A sheet of paper, in a column of the breadth of the page. */
  PAPER(720, 13.5, 165);

  private final double width;
  private final double letter;
  private final double levels;

  CurveSize(double width, double letter, double levels) {
    this.width = width;
    this.letter = letter;
    this.levels = levels;
  }

  /** Breadth of the picture, in its own units. */
  public double width() {
    return width;
  }

  /** Size of letters, in the same units. */
  double letter() {
    return letter;
  }

  /** Height of the part that shows progesterone. */
  double levels() {
    return levels;
  }
}
