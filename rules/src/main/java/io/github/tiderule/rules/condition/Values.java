package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.conclusion.reading.Held;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Facts, values and names of properties in plain words. */
final class Values {

  /** What a value that nobody gave reads as. */
  static final Sentence NOT_GIVEN = plain("not given");

  private static final Map<String, String> KINDS =
      Map.of(
          "Level", "progesterone value",
          "Progesterone", "progesterone report",
          "ProgesteroneBand", "kit band",
          "LhTest", "LH test",
          "OvaryScan", "ultrasound look at the ovaries",
          "BreedingDone", "breeding",
          "CandidateDay", "day to breed on",
          "Forecast", "estimate of ovulation",
          "Held", "hold",
          "Question", "open question");

  /** Kinds that take "an" although their first letter does not say so. */
  private static final Set<String> WITH_AN = Set.of("LhTest", "OvaryScan");

  /** Properties whose values are ids of observations. */
  private static final Set<String> HOLD_IDS = Set.of("id", "observation", "observations", "about");

  private static final Set<String> NO_UNIT = Set.of("1", "ratio", "share", "probability", "count");

  private static final Map<String, String> PROPERTIES =
      Map.ofEntries(
          Map.entry("low", "level"),
          Map.entry("high", "level"),
          Map.entry("referenceLow", "level"),
          Map.entry("referenceHigh", "level"),
          Map.entry("ngPerMl", "level"),
          Map.entry("otherNgPerMl", "level in the other unit"),
          Map.entry("tenthNgPerMl", "a tenth of the level"),
          Map.entry("tenfoldNgPerMl", "ten times the level"),
          Map.entry("cornifiedPercent", "cornified cells"),
          Map.entry("bodyMassKg", "body mass"),
          Map.entry("on", "its day"),
          Map.entry("at", "its time"),
          Map.entry("width90Days", "width of the estimate"));

  private static final Map<String, String> UNITS =
      Map.of(
          "low", "ng/mL",
          "high", "ng/mL",
          "referenceLow", "ng/mL",
          "referenceHigh", "ng/mL",
          "ngPerMl", "ng/mL",
          "otherNgPerMl", "ng/mL",
          "cornifiedPercent", "%",
          "bodyMassKg", "kg",
          "width90Days", "day");

  private Values() {}

  /** A word that the rules have for a kind of fact, a property or a value. */
  private record Plain(String word) implements Worded {}

  /** Words of ours without anything filled in. */
  static Sentence plain(String words) {
    return Sentence.of("{}", new Plain(words));
  }

  /** A kind of fact without an article. */
  static String noun(Class<?> type) {
    String name = type.getSimpleName();
    return KINDS.getOrDefault(name, split(name));
  }

  /** A kind of fact with its article. */
  static Sentence kind(Class<?> type) {
    String noun = noun(type);
    boolean an = WITH_AN.contains(type.getSimpleName()) || "aeio".indexOf(noun.charAt(0)) >= 0;
    return plain((an ? "an " : "a ") + noun);
  }

  /** Whether pointing at a fact says what kind it is. */
  static boolean saysItsKind(Object fact) {
    return !(fact instanceof Observation
        || fact instanceof Level
        || fact instanceof Held
        || fact instanceof CandidateDay
        || fact instanceof Parameter);
  }

  /** A fact as one would point at it. */
  static Sentence fact(Object fact) {
    if (fact instanceof Observation observation) {
      return key(observation.id());
    }
    if (fact instanceof Level level) {
      return key(level.observation());
    }
    if (fact instanceof Finding finding) {
      Sentence kind = words(finding.kind());
      return finding.observations().isEmpty()
          ? Sentence.of("the finding '{}'", kind)
          : Sentence.of("the finding '{}' on {}", kind, Part.keys(finding.observations()));
    }
    if (fact instanceof Question question) {
      return Sentence.of("the question about {}", Part.key(question.about()));
    }
    if (fact instanceof Held held) {
      return Sentence.of("what holds {}", Part.key(held.observation()));
    }
    if (fact instanceof CandidateDay candidate) {
      return Sentence.of("{}", candidate.day());
    }
    if (fact instanceof Parameter parameter) {
      return Sentence.of(
          "{} = {}", Part.quote(parameter.id()), withUnit(parameter.value(), parameter.unit()));
    }
    return plain("the " + noun(fact.getClass()));
  }

  /** An observation. */
  private static Sentence key(String observation) {
    return Sentence.of("{}", Part.key(observation));
  }

  /** A property's name in words. */
  static String property(String name) {
    return PROPERTIES.getOrDefault(name, name.matches("\\w+") ? split(name) : name);
  }

  /** The unit of a property; empty where it has none or none is known. */
  static String unit(String property) {
    return UNITS.getOrDefault(property, "");
  }

  /** The value of a property as one would write it, with its unit; an id is an observation. */
  static Sentence of(String property, @Nullable Object value, String unit) {
    String last = property.substring(property.lastIndexOf('.') + 1);
    if (HOLD_IDS.contains(last)) {
      if (value instanceof String id) {
        return key(id);
      }
      if (value instanceof Collection<?> ids && !ids.isEmpty()) {
        return Sentence.of("{}", Part.keys(ids.stream().map(Object::toString).toList()));
      }
    }
    return withUnit(value, unit);
  }

  /** A value as one would write it. */
  static Sentence words(@Nullable Object value) {
    if (value == null) {
      return NOT_GIVEN;
    }
    if (value instanceof Double number) {
      return number(number);
    }
    if (value instanceof Boolean yes) {
      return plain(yes ? "yes" : "no");
    }
    if (value instanceof Worded || value instanceof Series || value instanceof LocalDate) {
      return Sentence.of("{}", value);
    }
    if (value instanceof Enum<?> constant) {
      return plain(constant.name().toLowerCase(Locale.ROOT).replace('_', ' '));
    }
    if (value instanceof Collection<?> many) {
      return many.isEmpty() ? plain("none") : listed(many.stream().map(Values::words).toList());
    }
    return Sentence.quoted(value.toString());
  }

  /** Several, with commas. */
  static Sentence listed(List<Sentence> all) {
    return all.size() == 1
        ? all.get(0)
        : Sentence.of(
            "{}", new Part.Several(all.stream().map(Part::of).toList(), Part.Joint.COMMAS));
  }

  /** A number with its unit, left out where it only says that there is none. */
  static Sentence withUnit(@Nullable Object value, String unit) {
    boolean bare = unit.isEmpty() || !(value instanceof Number) || NO_UNIT.contains(unit);
    return bare ? words(value) : Sentence.of("{} {}", words(value), new Plain(unit));
  }

  private static Sentence number(double value) {
    if (Double.isNaN(value)) {
      return NOT_GIVEN;
    }
    return Double.isInfinite(value) ? plain("without limit") : Sentence.of("{:thousandths}", value);
  }

  private static String split(String camel) {
    return camel.replaceAll("(?<=[a-z])(?=[A-Z0-9])", " ").toLowerCase(Locale.ROOT);
  }
}
