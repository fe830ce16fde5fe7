package io.github.tiderule.api.report.text;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.sentence.Marks;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Phrasing;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * How a season is told to somebody: the one way from sentences, days, times, numbers and
 * observations to words, for the terminal, pages, paper, pictures and calendars. What it has said
 * is not looked through again.
 */
public final class Telling extends Phrasing {

  private static final Texts TEXTS = Texts.ofReports();

  /** What stands for an observation. */
  private enum Naming {
    /** Its key, as in the file. */
    KEYS,
    /** What people call it, its key behind it where it is told in whole. */
    NAMES_AND_KEYS,
    /** What people call it, its key behind it where that would be two. */
    NAMES
  }

  private final Words words;
  private final Naming naming;
  private final @Nullable ObservationWords names;

  private Telling(Words words, Naming naming, @Nullable CycleRecord cycle) {
    this.words = words;
    this.naming = naming;
    this.names = cycle == null ? null : new ObservationWords(cycle, words);
  }

  /** On a terminal, about no season of its own. */
  public static Telling onTerminal() {
    return inWords(Words.REPORTS);
  }

  /** On a terminal: keys stand as in the file. */
  public static Telling onTerminal(CycleRecord cycle) {
    return new Telling(Words.REPORTS, Naming.KEYS, cycle);
  }

  /** On paper, where the observations stand in a table by their keys. */
  public static Telling onPaper(CycleRecord cycle) {
    return new Telling(Words.REPORTS, Naming.NAMES_AND_KEYS, cycle);
  }

  /** To a person. */
  public static Telling toPerson(CycleRecord cycle, Words words) {
    return new Telling(words, Naming.NAMES, cycle);
  }

  /** To a vet, who compares it with what stands in the record under a key. */
  public static Telling toVet(CycleRecord cycle, Words words) {
    return new Telling(words, Naming.NAMES_AND_KEYS, cycle);
  }

  /** In the words of a country, about no season of its own. */
  public static Telling inWords(Words words) {
    return new Telling(words, Naming.KEYS, null);
  }

  /** Who a report is about. */
  public static String who(@Nullable String name, @Nullable String id) {
    return name != null ? name : id != null ? id : TEXTS.say("report.unnamed");
  }

  /** Days, times and numbers. */
  public Words words() {
    return words;
  }

  /** A sentence that begins with a capital, whatever its template does. */
  public String capital(Sentence sentence) {
    String said = say(sentence);
    return said.isEmpty()
        ? said
        : said.substring(0, 1).toUpperCase(Locale.ROOT) + said.substring(1);
  }

  /** Observations as they begin a line: by key, or as in {@code The smear of Mon 11 Jan 08:30}. */
  public String named(List<String> ids) {
    return say(Sentence.of("{}", Part.keys(ids)));
  }

  /** As in {@code the progesterone 3.2 ng/mL of Mon 11 Jan, 08:30 (p3)}; else the key alone. */
  public String observation(String id) {
    Observation found = find(id);
    if (found == null || names == null) {
      return ObservationWords.field(id);
    }
    boolean needed = naming != Naming.NAMES || names.isAlike(found);
    return names.whole(found) + (needed ? behind(id) : "");
  }

  /** Several, with commas. */
  public String observations(List<String> ids) {
    return ids.stream().map(this::observation).collect(Collectors.joining(", "));
  }

  /** Several moments, one after the other. */
  public String moments(List<OffsetDateTime> all) {
    return all.stream().map(words::moment).collect(Collectors.joining(TEXTS.say("report.and")));
  }

  private static String behind(String key) {
    return TEXTS.say("observation.key", key);
  }

  private @Nullable Observation find(String id) {
    return names == null ? null : names.find(id);
  }

  @Override
  protected String observations(List<Part.Key> keys, Part.Joint joint, Slot slot) {
    ObservationWords known = names;
    if (naming == Naming.KEYS || known == null) {
      return super.observations(keys, joint, slot);
    }
    List<String> said = new ArrayList<>();
    String kindBefore = "";
    for (int i = 0; i < keys.size(); i++) {
      String key = keys.get(i).observation();
      Observation found = known.find(key);
      if (found == null) {
        said.add(key);
        kindBefore = "";
        continue;
      }
      String kind = ObservationWords.kind(found);
      boolean joinedByWord =
          joint != Part.Joint.COMMAS && (i == keys.size() - 1 || joint == Part.Joint.SEMICOLONS);
      boolean sameKind = kind.equals(kindBefore) && !joinedByWord;
      String name = known.moment(found) + (known.isAlike(found) ? behind(key) : "");
      String article = slot.first() && i == 0 ? "observation.named.first" : "observation.named";
      said.add(
          slot.afterItsNoun()
              ? i == 0 ? TEXTS.say("observation.named.behind", name) : name
              : sameKind ? name : TEXTS.say(article, kind, name));
      kindBefore = kind;
    }
    return joined(said, joint);
  }

  @Override
  protected String drawn(Part.Drawn drawn, Slot slot) {
    // what people call it holds its day
    return naming == Naming.KEYS || find(drawn.observation()) == null
        ? super.drawn(drawn, slot)
        : observations(List.of(new Part.Key(drawn.observation())), Part.Joint.COMMAS, slot);
  }

  @Override
  protected Marks marks() {
    return words.marks();
  }

  @Override
  protected String day(LocalDate day, Part.DayForm form) {
    return switch (form) {
      case FILE -> near(day);
      case SHORT -> words.shortDay(day);
      case FULL -> words.day(day);
    };
  }

  /** With its year where that is not the year of the season. */
  private String near(LocalDate day) {
    return names != null && names.isOfThisYear(day) ? words.shortDay(day) : words.day(day);
  }

  @Override
  protected String time(OffsetDateTime at, Part.TimeForm form) {
    return switch (form) {
      case CLOCK -> words.clock(at);
      case SHORT -> words.shortDay(at.toLocalDate()) + " " + words.clock(at);
      case SHORT_COMMA -> words.shortMoment(at);
      case FULL -> words.moment(at);
    };
  }
}
