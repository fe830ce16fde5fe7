package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Labels;
import io.github.tiderule.api.picture.svg.Svg;

/**
 * What all parts of a picture share.
 *
 * @param times from left to right
 * @param labels places that are taken
 */
record Frame(CurveInput input, CurveSize size, TimeScale times, Labels labels) {

  static Frame of(CurveInput input, CurveSize size) {
    double left = 4.4 * size.letter();
    double right = size.width() - 2.9 * size.letter();
    TimeScale times = TimeScale.of(input, left, right);
    return new Frame(input, size, times, new Labels(left, right));
  }

  double letter() {
    return size.letter();
  }

  double left() {
    return times.left();
  }

  double right() {
    return times.right();
  }

  /** Half the breadth of a mark. */
  double mark() {
    return letter() * 0.34;
  }

  /** Words in the margin, before a row. */
  void rowName(Svg svg, String words, double y) {
    svg.words(left() - 5, y, letter(), "end", Colour.QUIET, words);
  }
}
