package io.github.tiderule.api.picture.svg;

/** Colours of the curve. In grey they are as far apart as they need be; shape tells the rest. */
public final class Colours {

  /** What lies beneath, and what is not filled. */
  public static final String PAPER = "#ffffff";

  /** Words and outlines. */
  public static final String INK = "#1a1a1a";

  /** What stands back. */
  public static final String QUIET = "#4d4d4d";

  /** Lines to read along. */
  public static final String GRID = "#d9d9d9";

  /** Edges of a panel. */
  public static final String FRAME = "#8c8c8c";

  /** Expected values. */
  public static final String BAND = "#e3e9ef";

  /** Edges of the expected values. */
  public static final String BAND_EDGE = "#5d7185";

  /** Days to breed on. */
  public static final String BREED = "#0a6647";

  /** The time of the answer. */
  public static final String NOW = "#9c1430";

  /** Ovulation. */
  public static final String OVULATION = "#8a4b08";

  /** The area beneath the curve of ovulation. */
  public static final String OVULATION_FILL = "#f2dfc6";

  /** The LH peak. */
  public static final String PEAK = "#4a3a8a";

  private Colours() {}
}
