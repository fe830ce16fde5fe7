package io.github.tiderule.rules.sentence;

import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.assay.Unit;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;

/**
 * Puts sentences into words. This one is in English for other programs: observations by their ids,
 * days as in files. Whoever tells a person overrides how a part is written.
 */
public class Phrasing {

  /** English for other programs. */
  public static final Phrasing PLAIN = new Phrasing();

  private static final List<String> DAYS = List.of("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun");
  private static final List<String> MONTHS =
      List.of("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec");

  /** Nobody but a phrasing of another kind needs one of its own. */
  protected Phrasing() {}

  /** A sentence in words, without a full stop unless the template has one. */
  public final String say(Sentence sentence) {
    return say(sentence, true);
  }

  /** The same as it stands behind other words of a longer sentence. */
  public final String sayWithin(Sentence sentence) {
    return say(sentence, false);
  }

  private String say(Sentence sentence, boolean first) {
    String used = template(sentence.template());
    Template template = Template.of(used);
    // a template of another language has the marks of that language
    List<String> words =
        used.equals(sentence.template()) ? template.words(marks()) : template.words();
    StringBuilder said = new StringBuilder(words.get(0));
    for (int i = 0; i < template.places().size(); i++) {
      Slot slot = new Slot(first && said.isEmpty(), template.places().get(i).forms());
      said.append(say(sentence.parts().get(i), slot)).append(words.get(i + 1));
    }
    return said.toString();
  }

  /** Sentences in words, one for one. */
  public final List<String> say(List<Sentence> sentences) {
    return sentences.stream().map(this::say).toList();
  }

  /**
   * Where a part stands.
   *
   * @param first whether it begins the sentence
   * @param forms what the template says of how it is written
   */
  public record Slot(boolean first, List<String> forms) {

    /** Whether the noun for the thing stands before it: {@code the smear of Mon 1 Mar}. */
    public boolean afterItsNoun() {
      return forms.contains("of");
    }
  }

  /** The template to use in place of the English one. */
  protected String template(String english) {
    return english;
  }

  private String say(Part part, Slot slot) {
    if (part instanceof Part.Key key) {
      return observations(List.of(key), Part.Joint.COMMAS, slot);
    }
    if (part instanceof Part.Drawn drawn) {
      return drawn(drawn, slot);
    }
    if (part instanceof Part.Several several) {
      return several(several, slot);
    }
    if (part instanceof Part.Concentration level) {
      return concentration(level);
    }
    if (part instanceof Part.Quantity quantity) {
      return NumberForm.write(quantity.value(), slot.forms(), marks());
    }
    if (part instanceof Part.Figure figure) {
      return marks().of(Double.toString(figure.value()));
    }
    if (part instanceof Part.Day day) {
      return day(day.day(), day.form());
    }
    if (part instanceof Part.Time time) {
      return time(time.at(), time.form());
    }
    if (part instanceof Part.Term term) {
      return term(term);
    }
    if (part instanceof Part.Scale scale) {
      return scale(scale);
    }
    if (part instanceof Part.Quote quote) {
      return quote.words();
    }
    return say(((Part.Inner) part).sentence(), slot.first());
  }

  private String several(Part.Several several, Slot slot) {
    if (!several.parts().isEmpty()
        && several.parts().stream().allMatch(Part.Key.class::isInstance)) {
      return observations(
          several.parts().stream().map(Part.Key.class::cast).toList(), several.joint(), slot);
    }
    List<String> said = new ArrayList<>();
    for (Part one : several.parts()) {
      said.add(say(one, new Slot(slot.first() && said.isEmpty(), slot.forms())));
    }
    return joined(said, several.joint());
  }

  /** Words one after the other. */
  protected String joined(List<String> words, Part.Joint joint) {
    StringJoiner joined = new StringJoiner(joint == Part.Joint.SEMICOLONS ? "; " : ", ");
    int last = words.size() - 1;
    for (int i = 0; i <= last; i++) {
      if (i == last && i > 0 && joint == Part.Joint.AND) {
        return joined + " and " + words.get(i);
      }
      joined.add(words.get(i));
    }
    return joined.toString();
  }

  /** Observations, at least one. */
  protected String observations(List<Part.Key> keys, Part.Joint joint, Slot slot) {
    return joined(keys.stream().map(Part.Key::observation).toList(), joint);
  }

  /** An observation with its day. */
  protected String drawn(Part.Drawn drawn, Slot slot) {
    return drawn.observation() + " of " + day(drawn.day(), Part.DayForm.SHORT);
  }

  /** A concentration of progesterone. */
  protected String concentration(Part.Concentration level) {
    Unit unit = level.unit();
    return unit == null
        ? in(Unit.NG_PER_ML, level) + " (" + in(Unit.NMOL_PER_L, level) + ")"
        : in(unit, level);
  }

  private String in(Unit unit, Part.Concentration level) {
    return marks().of(Digits.concentration(unit.fromNgPerMl(level.ngPerMl()))) + " " + unit.word();
  }

  /** The marks of a person's country. */
  protected Marks marks() {
    return Marks.PLAIN;
  }

  /** A day. */
  protected String day(LocalDate day, Part.DayForm form) {
    String year = form == Part.DayForm.FULL ? " " + day.getYear() : "";
    return form == Part.DayForm.FILE ? day.toString() : shortDay(day) + year;
  }

  private static String shortDay(LocalDate day) {
    return DAYS.get(day.getDayOfWeek().getValue() - 1)
        + " "
        + day.getDayOfMonth()
        + " "
        + MONTHS.get(day.getMonthValue() - 1);
  }

  /** A moment, where she is. */
  protected String time(OffsetDateTime at, Part.TimeForm form) {
    String clock = String.format(Locale.ROOT, "%02d:%02d", at.getHour(), at.getMinute());
    return switch (form) {
      case CLOCK -> clock;
      case SHORT -> day(at.toLocalDate(), Part.DayForm.SHORT) + " " + clock;
      case SHORT_COMMA -> day(at.toLocalDate(), Part.DayForm.SHORT) + ", " + clock;
      case FULL -> day(at.toLocalDate(), Part.DayForm.FULL) + ", " + clock;
    };
  }

  /** A word of the trade. */
  protected String term(Part.Term term) {
    return term.word().word();
  }

  /** A laboratory with its method. */
  protected String scale(Part.Scale scale) {
    return scale.series().words();
  }
}
