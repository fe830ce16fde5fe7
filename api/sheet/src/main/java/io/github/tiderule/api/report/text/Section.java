package io.github.tiderule.api.report.text;

import io.github.tiderule.api.words.Texts;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A part of a report before it is set in lines, so that it can be set in another way.
 *
 * @param heading empty for the lines at the head and at the foot of a report
 * @param lines paragraphs, in order
 */
public record Section(String heading, List<Line> lines) {

  private static final Texts TEXTS = Texts.ofReports();

  /** The one thing to do now. */
  public static final String NOW = TEXTS.say("section.now");

  /** What her values do. */
  public static final String VALUES = TEXTS.say("section.values");

  /** Which days and when, and what to do for it. */
  public static final String PLAN = TEXTS.say("section.plan");

  /** When she ovulates, and how closely that is known. */
  public static final String HOW_SURE = TEXTS.say("section.how-sure");

  /** What to test next, and when to ask again. */
  public static final String NEXT_TEST = TEXTS.say("section.next-test");

  /** What must be answered first. */
  public static final String QUESTIONS = TEXTS.say("section.questions");

  /** Results that are not taken as reported. */
  public static final String TAKEN = TEXTS.say("section.taken");

  /** When she would whelp. */
  public static final String WHELPING = TEXTS.say("section.whelping-if");

  /** When she whelps. */
  public static final String WHELPING_ONCE_BRED = TEXTS.say("section.whelping");

  /** What is due in a pregnancy. */
  public static final String PREGNANCY = TEXTS.say("section.pregnancy");

  /** What is past of a pregnancy. */
  public static final String HAPPENED = TEXTS.say("section.happened");

  /** Days for a planned caesarean. */
  public static final String CAESAREAN = TEXTS.say("section.caesarean");

  /** What to do on the day of insemination, and what the semen is worth. */
  public static final String SHEET = TEXTS.say("section.sheet");

  /** What to see to before a season. */
  public static final String BEFORE_SEASON = TEXTS.say("section.before-season");

  /** A whelping beside its forecast. */
  public static final String LOOKING_BACK = TEXTS.say("section.looking-back");

  /** Signs that call a vet, by the kind of red flag. */
  public static final Map<String, String> RED_FLAGS =
      Map.of(
          "pregnancy", TEXTS.say("section.red-flags.pregnancy"),
          "whelping", TEXTS.say("section.red-flags.whelping"),
          "after-whelping", TEXTS.say("section.red-flags.after-whelping"));

  /** Values at which the plan would be another. */
  public static final String WOULD_CHANGE = TEXTS.say("section.would-change");

  /** What moved the estimate most. */
  public static final String WEIGHTS = TEXTS.say("section.weights");

  /** What schools hold. */
  public static final String DISAGREEMENTS = TEXTS.say("section.disagreements");

  /** What to take care of. */
  public static final String CAUTIONS = TEXTS.say("section.cautions");

  /** Rules that speak in a later answer only. */
  public static final String RULES_NEW = TEXTS.say("section.rules-new");

  /** Rules that spoke in an earlier answer only. */
  public static final String RULES_GONE = TEXTS.say("section.rules-gone");

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

  /** The same with names where keys of observations stand. */
  public Section with(KeyNames keys) {
    return new Section(
        heading,
        lines.stream()
            .map(line -> new Line(line.indent(), line.mark(), keys.in(line.words())))
            .toList());
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
