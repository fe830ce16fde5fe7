package io.github.tiderule.api.report;

import java.util.ArrayList;
import java.util.List;

/**
 * A part of a report before it is set in lines, so that it can be set in another way.
 *
 * @param heading empty for the lines at the head and at the foot of a report
 * @param lines paragraphs, in order
 */
public record Section(String heading, List<Line> lines) {

  public Section {
    lines = List.copyOf(lines);
  }

  /**
   * A paragraph.
   *
   * @param indent columns it is set in by
   * @param mark what it hangs from, such as a bullet or a label; may be empty
   */
  public record Line(int indent, String mark, String words) {

    /** Mark and words, the mark left out where it is a bullet. */
    public String text() {
      return mark.isEmpty() || mark.equals("-") ? words : mark + " " + words;
    }
  }

  /** The paragraphs as texts. */
  public List<String> texts() {
    return lines.stream().map(Line::text).toList();
  }

  /** The section of a heading; one without lines where there is none. */
  public static Section of(List<Section> all, String heading) {
    return all.stream()
        .filter(section -> section.heading().equals(heading))
        .findFirst()
        .orElse(new Section(heading, List.of()));
  }

  /** A section being written. */
  static final class Draft {

    private final String heading;
    private final List<Line> lines = new ArrayList<>();

    Draft(String heading) {
      this.heading = heading;
    }

    void add(int indent, String mark, String words) {
      lines.add(new Line(indent, mark, words));
    }

    Section section() {
      return new Section(heading, lines);
    }
  }
}
