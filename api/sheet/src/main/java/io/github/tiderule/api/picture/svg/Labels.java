package io.github.tiderule.api.picture.svg;

import java.util.ArrayList;
import java.util.List;

/** Which places of a picture are taken, so that no label lies on another or on a mark. */
public final class Labels {

  /** Breadth of a letter, in its size; broad letters of narrow scripts need no more. */
  private static final double LETTER = 0.58;

  private static final double WIDE_LETTER = 1.05;
  private static final double GAP = 1.5;

  private final double left;
  private final double right;
  private final List<Box> taken = new ArrayList<>();

  /** Nothing taken yet, for labels that stay between two values of x. */
  public Labels(double left, double right) {
    this.left = left;
    this.right = right;
  }

  /** A place. */
  record Box(double left, double top, double right, double bottom) {

    private boolean meets(Box other) {
      return left < other.right + GAP
          && other.left < right + GAP
          && top < other.bottom + GAP
          && other.top < bottom + GAP;
    }
  }

  /** About how broad words are; when in doubt, more. */
  public static double breadth(String words, double letter) {
    return words
        .codePoints()
        .mapToDouble(character -> letter * (character > 0x10FF ? WIDE_LETTER : LETTER))
        .sum();
  }

  /** Says that a mark is about a place. */
  public void mark(double x, double y, double r) {
    taken.add(new Box(x - r, y - r, x + r, y + r));
  }

  /** Says that a place is taken. */
  public void take(double left, double top, double right, double bottom) {
    taken.add(new Box(left, top, right, bottom));
  }

  /**
   * Writes words at the first of some places where they lie on nothing.
   *
   * @param places pairs of x and the y of the base line; the words are centred about x
   * @return whether there was such a place
   */
  public boolean write(Svg svg, String words, double letter, Colour fill, double... places) {
    double half = breadth(words, letter) / 2;
    if (words.isEmpty() || 2 * half > right - left) {
      return false;
    }
    for (int i = 0; i < places.length; i += 2) {
      double x = Math.min(Math.max(places[i], left + half), right - half);
      double y = places[i + 1];
      Box box = new Box(x - half, y - 0.8 * letter, x + half, y + 0.25 * letter);
      if (taken.stream().noneMatch(box::meets)) {
        taken.add(box);
        svg.empty(
            "rect",
            "x",
            box.left,
            "y",
            box.top,
            "width",
            box.right - box.left,
            "height",
            box.bottom - box.top,
            "fill",
            Colour.PAPER,
            "fill-opacity",
            0.8);
        svg.words(x, y, letter, "middle", fill, words);
        return true;
      }
    }
    return false;
  }
}
