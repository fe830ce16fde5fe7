package io.github.tiderule.api.picture.svg;

import java.util.Locale;

/**
 * Colour of the curve, named by use. In grey they are as far apart as they need be; shape tells the
 * rest. Written as an attribute and as a class, so that a picture within a page takes the colours
 * of its theme, and one alone has these.
 */
public enum Colour {
  /** What lies beneath, and what is not filled. */
  PAPER("#ffffff"),
  /** Words and outlines. */
  INK("#1d2528"),
  /** What stands back. */
  QUIET("#4d595e"),
  /** Lines to read along. */
  GRID("#dde2e3"),
  /** Edges of a panel. */
  FRAME("#8b979b"),
  /** Expected values. */
  BAND("#e3eaee"),
  /** Edges of the expected values. */
  BAND_EDGE("#5d7185"),
  /** Days to breed on. */
  BREED("#0a6647"),
  /** The share of eggs of any other day. */
  SHARE("#a9cfbd"),
  /** The time of the answer. */
  NOW("#9c1430"),
  /** Ovulation. */
  OVULATION("#8a4b08"),
  /** The area beneath the curve of ovulation. */
  OVULATION_FILL("#f2dfc6"),
  /** The LH peak. */
  PEAK("#4a3a8a"),
  /** Values of the first series, and so on. */
  SERIES_1("#123f66"),
  SERIES_2("#7d3311"),
  SERIES_3("#3c5a14"),
  SERIES_4("#57257f"),
  SERIES_5("#5c4a00"),
  SERIES_6("#004f52"),
  SERIES_7("#701447");

  private final String hex;

  Colour(String hex) {
    this.hex = hex;
  }

  /** As a picture alone has it. */
  public String hex() {
    return hex;
  }

  /** What a style sheet knows it by, as in {@code band-edge}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
