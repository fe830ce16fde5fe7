package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Svg;
import io.nayuki.qrcodegen.QrCode;

/**
 * An address as a QR code, ISO/IEC 18004, for a telephone to read off a screen. Dark on light
 * whatever the theme of its page: many readers know no other.
 */
public final class QrPicture {

  /** The quiet zone of the standard, in modules. */
  private static final int MARGIN = 4;

  private static final double MODULE = 5;

  private QrPicture() {}

  /**
   * Draws it.
   *
   * @param text what is read from it, of at most a few hundred characters
   * @param title what it is, for whoever cannot see it
   */
  public static String svg(String text, String title) {
    QrCode code = QrCode.encodeText(text, QrCode.Ecc.MEDIUM);
    int modules = code.size + 2 * MARGIN;
    double side = MODULE * modules;
    return new Svg()
        .open(
            "svg",
            "xmlns",
            "http://www.w3.org/2000/svg",
            "viewBox",
            "0 0 " + modules + " " + modules,
            "width",
            side,
            "height",
            side,
            "role",
            "img",
            "aria-label",
            title,
            "shape-rendering",
            "crispEdges")
        .empty("rect", "width", modules, "height", modules, "fill", Colour.PAPER.hex())
        .empty("path", "d", dark(code), "fill", Colour.INK.hex())
        .close("svg")
        .toString();
  }

  /** Every run of dark modules, line by line. */
  private static String dark(QrCode code) {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < code.size; y++) {
      int x = 0;
      while (x < code.size) {
        int from = x;
        while (x < code.size && code.getModule(x, y)) {
          x++;
        }
        if (x > from) {
          path.append('M').append(from + MARGIN).append(' ').append(y + MARGIN);
          path.append('h').append(x - from).append("v1h").append(from - x).append('z');
        } else {
          x++;
        }
      }
    }
    return path.toString();
  }
}
