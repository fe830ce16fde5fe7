package io.github.tiderule.api.report.text;

import io.github.tiderule.format.node.Characters;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A plain text page no wider than {@value #WIDTH} columns. Longer words are broken; a character
 * that does not show as itself is written out, so nothing in a file can act on a terminal.
 */
public final class Page {

  /** Columns of the narrowest screen or sheet a page is written for. */
  public static final int WIDTH = 80;

  private final Telling telling;
  private final StringBuilder text = new StringBuilder();
  private final List<Section.Draft> drafts =
      new ArrayList<>(List.of(new Section.Draft(SectionKind.HEAD, "")));

  /**
   * An empty page.
   *
   * @param telling how sentences on it are told
   */
  public Page(Telling telling) {
    this.telling = telling;
  }

  /** How sentences on it are told. */
  public Telling telling() {
    return telling;
  }

  /** What was written, before it was set in lines. */
  public List<Section> sections() {
    return drafts.stream().map(Section.Draft::section).toList();
  }

  private void keep(int indent, String mark, String words) {
    drafts.get(drafts.size() - 1).add(indent, mark, words);
  }

  /**
   * A heading with an empty line above it.
   *
   * @param parts what is filled into it
   */
  public void heading(SectionKind kind, Object... parts) {
    if (!text.isEmpty()) {
      text.append('\n');
    }
    String words = kind.heading(parts);
    paragraph("", "", words.toUpperCase(Locale.ROOT));
    drafts.add(new Section.Draft(kind, words));
  }

  /** An empty line, with which the foot begins. */
  public void gap() {
    text.append('\n');
    drafts.add(new Section.Draft(SectionKind.FOOT, ""));
  }

  /** A paragraph from the left edge. */
  public void line(String words) {
    keep(0, "", words);
    paragraph("", "", words);
  }

  /** A line whose columns are kept, if it fits; a paragraph otherwise. */
  public void preformatted(String words) {
    String row = safe(words);
    if (Columns.of(row) <= WIDTH) {
      keep(0, "", words);
      end(new StringBuilder(row));
    } else {
      line(words);
    }
  }

  /** A sentence set in by some columns. */
  public void indented(int columns, Sentence sentence) {
    indented(columns, telling.say(sentence));
  }

  /** A paragraph set in by some columns. */
  public void indented(int columns, String words) {
    keep(columns, "", words);
    String indent = " ".repeat(columns);
    paragraph(indent, indent, words);
  }

  /** A sentence that hangs from a mark at its left. */
  public void hanging(int columns, String mark, Sentence sentence) {
    hanging(columns, mark, telling.say(sentence));
  }

  /** A paragraph that hangs from a mark at its left, such as a bullet, a number or a label. */
  public void hanging(int columns, String mark, String words) {
    String first = " ".repeat(columns) + mark + " ";
    int hang = Columns.of(first);
    if (hang > WIDTH / 2) {
      indented(columns, mark + " " + words);
    } else {
      keep(columns, mark, words);
      paragraph(first, " ".repeat(hang), words);
    }
  }

  /** A paragraph for each sentence, each with a dash. */
  public void bullets(int columns, List<Sentence> all) {
    all.forEach(sentence -> hanging(columns, "-", sentence));
  }

  /**
   * A paragraph.
   *
   * @param first what its first line begins with; columns are kept as they are
   * @param rest what its other lines begin with
   */
  private void paragraph(String first, String rest, String words) {
    StringBuilder line = new StringBuilder(safe(first));
    int used = Columns.of(line.toString());
    boolean empty = true;
    for (String word : safe(words).split(" ", -1)) {
      String left = word;
      if (left.isEmpty()) {
        continue;
      }
      int wide = Columns.of(left);
      if (!empty && used + 1 + wide > WIDTH) {
        end(line);
        line = new StringBuilder(rest);
        used = Columns.of(rest);
        empty = true;
      }
      if (!empty) {
        line.append(' ');
        used++;
      }
      while (used + Columns.of(left) > WIDTH) {
        int cut = Columns.cut(left, WIDTH - used);
        line.append(left, 0, cut);
        left = left.substring(cut);
        end(line);
        line = new StringBuilder(rest);
        used = Columns.of(rest);
      }
      line.append(left);
      used += Columns.of(left);
      empty = false;
    }
    if (!line.isEmpty()) {
      end(line);
    }
  }

  private void end(StringBuilder line) {
    text.append(line.toString().stripTrailing()).append('\n');
  }

  private static String safe(String words) {
    StringBuilder plain = new StringBuilder(words.length());
    words
        .codePoints()
        .forEach(
            character ->
                plain.appendCodePoint(Character.isWhitespace(character) ? ' ' : character));
    return Characters.visible(plain.toString());
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
