package io.github.tiderule.api.picture.svg;

import io.github.tiderule.format.node.Markup;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.stream.Stream;

/**
 * Markup being written. Only presentation attributes: it needs no style sheet and does no harm
 * where inline styles are forbidden. Every text is escaped, and a character that does not show as
 * itself becomes a space.
 */
public final class Svg {

  private final StringBuilder markup = new StringBuilder();

  /** An element without content. */
  public Svg empty(String name, Object... attributes) {
    start(name, attributes);
    markup.append("/>\n");
    return this;
  }

  /** Opens an element. */
  public Svg open(String name, Object... attributes) {
    start(name, attributes);
    markup.append(">\n");
    return this;
  }

  /**
   * Opens a drawing as large as its view.
   *
   * @param labels ids of the texts that tell a reader what it shows, with blanks between
   */
  public Svg drawing(
      double width, double height, String role, String labels, Object... attributes) {
    Stream<Object> own =
        Stream.of(
            "xmlns",
            "http://www.w3.org/2000/svg",
            "viewBox",
            "0 0 " + number(width) + " " + number(height),
            "width",
            width,
            "height",
            height,
            "role",
            role,
            "aria-labelledby",
            labels);
    return open("svg", Stream.concat(own, Stream.of(attributes)).toArray());
  }

  /** Closes the element that was opened last under that name. */
  public Svg close(String name) {
    markup.append("</").append(name).append(">\n");
    return this;
  }

  /** An element that holds a text. */
  public Svg text(String name, String words, Object... attributes) {
    start(name, attributes);
    markup.append('>').append(Markup.escaped(words)).append("</").append(name).append(">\n");
    return this;
  }

  /** Words at a place; {@code anchor} is {@code start}, {@code middle} or {@code end}. */
  public Svg words(double x, double y, double letter, String anchor, Colour fill, String words) {
    return text(
        "text", words, "x", x, "y", y, "font-size", letter, "text-anchor", anchor, "fill", fill);
  }

  /** A straight line; an empty dash draws it whole. */
  public Svg line(
      double x1, double y1, double x2, double y2, Colour stroke, double width, String dash) {
    start("line", "x1", x1, "y1", y1, "x2", x2, "y2", y2, "stroke", stroke);
    attribute("stroke-width", width);
    if (!dash.isEmpty()) {
      attribute("stroke-dasharray", dash);
    }
    markup.append("/>\n");
    return this;
  }

  /** A line along a path, not filled; an empty dash draws it whole. */
  public Svg stroke(CharSequence path, Colour colour, double width, String dash) {
    return empty(
        "path",
        "d",
        path,
        "fill",
        "none",
        "stroke",
        colour,
        "stroke-width",
        width,
        "stroke-dasharray",
        dash.isEmpty() ? "none" : dash);
  }

  /** Another drawing, as it is. */
  public Svg add(Svg other) {
    markup.append(other.markup);
    return this;
  }

  private void start(String name, Object... attributes) {
    markup.append('<').append(name);
    StringBuilder classes = new StringBuilder();
    for (int i = 0; i < attributes.length; i += 2) {
      attribute((String) attributes[i], attributes[i + 1]);
      if (attributes[i + 1] instanceof Colour colour) {
        classes.append(classes.isEmpty() ? "" : " ");
        classes.append(attributes[i]).append('-').append(colour.word());
      }
    }
    if (!classes.isEmpty()) {
      attribute("class", classes);
    }
  }

  private void attribute(String name, Object value) {
    markup.append(' ').append(name).append("=\"").append(written(value)).append('"');
  }

  private static String written(Object value) {
    if (value instanceof Double number) {
      return number(number);
    }
    return value instanceof Colour colour ? colour.hex() : Markup.escaped(value.toString());
  }

  /** A length, to a hundredth. */
  public static String number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
    BigDecimal plain = rounded.stripTrailingZeros();
    return (plain.scale() < 0 ? plain.setScale(0) : plain).toPlainString();
  }

  @Override
  public String toString() {
    return markup.toString();
  }
}
