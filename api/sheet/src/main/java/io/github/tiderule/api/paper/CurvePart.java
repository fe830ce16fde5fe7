package io.github.tiderule.api.paper;

import io.github.tiderule.api.picture.Curve;
import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.format.node.Markup;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The curve, as broad as there is room. */
final class CurvePart implements Part {

  private static final Pattern SIZE =
      Pattern.compile("<svg ([^>]*?)width=\"([0-9.]+)\" height=\"([0-9.]+)\"");

  private final int[] broad;
  private final String svg;
  private final String description;

  /**
   * @param broad its breadth in millimetres, for each step of room
   */
  CurvePart(CurveInput input, int... broad) {
    Curve curve = Curve.of(input, CurveSize.PAPER);
    this.broad = broad;
    this.svg = curve.svg("curve");
    this.description = curve.title() + ". " + curve.description();
  }

  @Override
  public void write(Html html, Room room) {
    Matcher size = SIZE.matcher(svg);
    if (!size.find()) {
      throw new IllegalStateException("a picture without a size");
    }
    double width = room.most(broad);
    double height = width * Double.parseDouble(size.group(3)) / Double.parseDouble(size.group(2));
    String begin =
        "<svg alt=\""
            + Markup.escaped(description)
            + "\" "
            + size.group(1)
            + String.format(Locale.ROOT, "style=\"width: %.1fmm; height: %.1fmm\"", width, height);
    html.open("curve").raw(begin + svg.substring(size.end())).close();
  }
}
