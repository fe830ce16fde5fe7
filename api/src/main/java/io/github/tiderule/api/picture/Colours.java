package io.github.tiderule.api.picture;

/** Colours of the curve. In grey they are as far apart as they need be; shape tells the rest. */
final class Colours {

  static final String PAPER = "#ffffff";
  static final String INK = "#1a1a1a";
  static final String QUIET = "#4d4d4d";
  static final String GRID = "#d9d9d9";
  static final String FRAME = "#8c8c8c";
  static final String BAND = "#e3e9ef";
  static final String BAND_EDGE = "#5d7185";
  static final String BREED = "#0a6647";
  static final String NOW = "#9c1430";
  static final String OVULATION = "#8a4b08";
  static final String OVULATION_FILL = "#f2dfc6";
  static final String PEAK = "#4a3a8a";

  private Colours() {}
}
