package io.github.tiderule.api.report.text;

import java.util.ArrayList;
import java.util.List;

/**
 * A part of a report before it is set in lines, so that it can be set in another way.
 *
 * @param kind what it is about, and what it is picked by
 * @param heading empty for the lines at the head and at the foot of a report
 * @param lines paragraphs, in order
 */
public record Section(SectionKind kind, String heading, List<Line> lines) {

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

  /** The section of a kind; one without lines where there is none. */
  public static Section of(List<Section> all, SectionKind kind) {
    return all.stream()
        .filter(section -> section.kind() == kind)
        .findFirst()
        .orElse(new Section(kind, kind.heading(), List.of()));
  }

  /** A section being written. */
  static final class Draft {

    private final SectionKind kind;
    private final String heading;
    private final List<Line> lines = new ArrayList<>();

    Draft(SectionKind kind, String heading) {
      this.kind = kind;
      this.heading = heading;
    }

    void add(int indent, String mark, String words) {
      lines.add(new Line(indent, mark, words));
    }

    Section section() {
      return new Section(kind, heading, lines);
    }
  }
}
