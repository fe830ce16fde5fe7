package io.github.tiderule.api.picture.svg;

/** The shape of a series' values, with the dashes of the line between them. */
public enum Marker {
  CIRCLE(Colour.SERIES_1, ""),
  SQUARE(Colour.SERIES_2, "8 3"),
  TRIANGLE(Colour.SERIES_3, "2 3"),
  DIAMOND(Colour.SERIES_4, "10 3 2 3"),
  TURNED_TRIANGLE(Colour.SERIES_5, "5 2"),
  CROSS(Colour.SERIES_6, "1 4"),
  STAR(Colour.SERIES_7, "12 2 2 2 2 2");

  private final Colour colour;
  private final String dash;

  Marker(Colour colour, String dash) {
    this.colour = colour;
    this.dash = dash;
  }

  /**
   * The marker of the series at a place in the order of series; beyond the last they come again.
   */
  public static Marker of(int series) {
    return values()[series % values().length];
  }

  /** Colour of the outline and of the line between the values. */
  public Colour colour() {
    return colour;
  }

  /** Dashes of the line between the values, as SVG writes them; empty for a whole line. */
  public String dash() {
    return dash;
  }

  /**
   * Draws it.
   *
   * @param r half its breadth
   * @param full whether it is filled, which says that its value is taken
   */
  public void draw(Svg svg, double x, double y, double r, boolean full) {
    Colour fill = full ? colour : Colour.PAPER;
    if (this == CIRCLE) {
      svg.empty(
          "circle", "cx", x, "cy", y, "r", r, "fill", fill, "stroke", colour, "stroke-width", 1.5);
    } else {
      svg.empty("path", "d", path(x, y, r), "fill", fill, "stroke", colour, "stroke-width", 1.5);
    }
  }

  /** A ring that belongs to no series. */
  public static void ring(Svg svg, double x, double y, double r) {
    svg.empty(
        "circle",
        "cx",
        x,
        "cy",
        y,
        "r",
        r,
        "fill",
        Colour.PAPER,
        "stroke",
        Colour.INK,
        "stroke-width",
        1.3);
  }

  private String path(double x, double y, double r) {
    return switch (this) {
      case CIRCLE -> "";
      case SQUARE -> outline(x, y, r, -.9, -.9, .9, -.9, .9, .9, -.9, .9);
      case TRIANGLE -> outline(x, y, r, 0, -1.2, 1.1, .8, -1.1, .8);
      case DIAMOND -> outline(x, y, r, 0, -1.3, 1.3, 0, 0, 1.3, -1.3, 0);
      case TURNED_TRIANGLE -> outline(x, y, r, 0, 1.2, 1.1, -.8, -1.1, -.8);
      case CROSS ->
          outline(
              x, y, r, -.4, -1.2, .4, -1.2, .4, -.4, 1.2, -.4, 1.2, .4, .4, .4, .4, 1.2, -.4, 1.2,
              -.4, .4, -1.2, .4, -1.2, -.4, -.4, -.4);
      case STAR ->
          outline(
              x, y, r, 0, -1.4, .4, -.5, 1.3, -.4, .6, .2, .8, 1.1, 0, .6, -.8, 1.1, -.6, .2, -1.3,
              -.4, -.4, -.5);
    };
  }

  private static String outline(double x, double y, double r, double... corners) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < corners.length; i += 2) {
      path.append(i == 0 ? 'M' : 'L')
          .append(Svg.number(x + r * corners[i]))
          .append(' ')
          .append(Svg.number(y + r * corners[i + 1]));
    }
    return path.append('Z').toString();
  }
}
