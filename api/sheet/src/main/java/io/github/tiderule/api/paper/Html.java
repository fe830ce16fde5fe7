package io.github.tiderule.api.paper;

import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.node.Markup;
import java.util.List;

/** A sheet being written: the few forms its parts are made of. */
final class Html {

  private static final Texts TEXTS = Texts.ofReports();

  private final StringBuilder markup = new StringBuilder();
  private final String restElsewhere;
  private final int longest;

  /**
   * @param room texts longer than there is room for end with an ellipsis
   * @param restElsewhere where what is left out can be read, as in {@code the whole plan on the
   *     screen}
   */
  Html(Room room, String restElsewhere) {
    this.longest = room.most(900, 800, 700, 600, 500, 400, 240, 90);
    this.restElsewhere = restElsewhere;
  }

  Html title(String words) {
    return element("h1", "", words);
  }

  Html heading(String words) {
    return element("h2", "", words);
  }

  Html paragraph(String kind, String words) {
    return words.isEmpty() ? this : element("p", kind, words);
  }

  /** Opens a block of a kind the style sheet knows. */
  Html open(String kind) {
    markup.append("<div class=\"").append(kind).append("\">\n");
    return this;
  }

  Html close() {
    markup.append("</div>\n");
    return this;
  }

  /** A list, cut after so many; how many are left out is said, and where they are. */
  Html list(String kind, List<String> all, int most) {
    if (all.isEmpty()) {
      return this;
    }
    markup.append("<ul class=\"").append(kind).append("\">\n");
    all.stream().limit(most).forEach(words -> element("li", "", words));
    if (all.size() > most) {
      element("li", "more", TEXTS.say("paper.more", all.size() - most, restElsewhere));
    }
    markup.append("</ul>\n");
    return this;
  }

  /** The lines of a section, set in as they were, cut after so many. */
  Html lines(Section section, int most) {
    List<Section.Line> lines = section.lines();
    lines.stream()
        .limit(most)
        .forEach(line -> paragraph(line.indent() > 2 ? "in" : "", line.text()));
    return left("more", lines.size() - most);
  }

  /** Says how many lines were left out, where any were. */
  Html left(String kind, int lines) {
    return lines > 0 ? paragraph(kind, TEXTS.say("paper.more-lines", lines, restElsewhere)) : this;
  }

  /**
   * The texts of a section, none of them cut.
   *
   * @param runOn whether they stand in one paragraph, which takes less room
   */
  Html whole(Section section, boolean runOn) {
    List<String> texts = section.texts();
    (runOn ? List.of(String.join(" ", texts)) : texts)
        .forEach(words -> markup.append("<p>").append(Markup.escaped(words)).append("</p>\n"));
    return this;
  }

  /**
   * A table, cut after so many rows.
   *
   * @param caption what it holds
   * @param heads of its columns
   */
  Html table(String caption, List<String> heads, List<List<String>> rows, int most) {
    markup.append("<table>\n<caption>").append(Markup.escaped(caption)).append("</caption>\n");
    markup.append("<thead><tr>");
    heads.forEach(head -> element("th", "", head));
    markup.append("</tr></thead>\n<tbody>\n");
    int first = Math.max(0, rows.size() - most);
    for (List<String> row : rows.subList(first, rows.size())) {
      markup.append("<tr>");
      row.forEach(cell -> element("td", "", cell));
      markup.append("</tr>\n");
    }
    markup.append("</tbody>\n</table>\n");
    if (first > 0) {
      paragraph("more", TEXTS.say("paper.earlier-rows", first, restElsewhere));
    }
    return this;
  }

  /** Markup that is sound already, such as a picture. */
  Html raw(String sound) {
    markup.append(sound);
    return this;
  }

  private Html element(String name, String kind, String words) {
    markup.append('<').append(name);
    if (!kind.isEmpty()) {
      markup.append(" class=\"").append(kind).append('"');
    }
    markup.append('>').append(Markup.escaped(cut(words))).append("</").append(name).append(">\n");
    return this;
  }

  private String cut(String words) {
    int letters = words.codePointCount(0, words.length());
    return letters <= longest
        ? words
        : words.substring(0, words.offsetByCodePoints(0, longest - 1)) + "…";
  }

  @Override
  public String toString() {
    return markup.toString();
  }
}
