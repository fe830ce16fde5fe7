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
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Facts, values and names of properties in plain words. */
final class Values {

  private static final int DECIMALS = 3;

  private static final Map<String, String> KINDS =
      Map.of(
          "Level", "a progesterone value",
          "Progesterone", "a progesterone report",
          "ProgesteroneBand", "a kit band",
          "LhTest", "an LH test",
          "OvaryScan", "an ultrasound look at the ovaries",
          "BreedingDone", "a breeding",
          "CandidateDay", "a day to breed on",
          "Forecast", "an estimate of ovulation",
          "Held", "a hold",
          "Question", "an open question");

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

  /** A kind of fact with its article. */
  static String kind(Class<?> type) {
    String name = type.getSimpleName();
    String plain = split(name);
    return KINDS.getOrDefault(name, ("aeio".indexOf(plain.charAt(0)) < 0 ? "a " : "an ") + plain);
  }

  /** A fact as one would point at it. */
  static String fact(Object fact) {
    if (fact instanceof Observation observation) {
      return observation.id();
    }
    if (fact instanceof Level level) {
      return level.observation();
    }
    if (fact instanceof Finding finding) {
      return "the finding '"
          + words(finding.kind())
          + "'"
          + (finding.observations().isEmpty()
              ? ""
              : " on " + String.join(", ", finding.observations()));
    }
    if (fact instanceof Question question) {
      return "the question about " + question.about();
    }
    if (fact instanceof Held held) {
      return "what holds " + held.observation();
    }
    if (fact instanceof CandidateDay candidate) {
      return candidate.day().toString();
    }
    if (fact instanceof Parameter parameter) {
      return parameter.id() + " = " + withUnit(parameter.value(), parameter.unit());
    }
    return kind(fact.getClass()).replaceFirst("^an? ", "the ");
  }

  /** A property's name in words. */
  static String property(String name) {
    return PROPERTIES.getOrDefault(name, name.matches("\\w+") ? split(name) : name);
  }

  /** The unit of a property; empty where it has none or none is known. */
  static String unit(String property) {
    return UNITS.getOrDefault(property, "");
  }

  /** A value as one would write it. */
  static String words(@Nullable Object value) {
    if (value == null) {
      return "not given";
    }
    if (value instanceof Double number) {
      return number(number);
    }
    if (value instanceof Boolean yes) {
      return yes ? "yes" : "no";
    }
    if (value instanceof Worded worded) {
      return worded.word();
    }
    if (value instanceof Enum<?> constant) {
      return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
    if (value instanceof Series series) {
      return series.words();
    }
    if (value instanceof Collection<?> many) {
      return many.isEmpty()
          ? "none"
          : many.stream().map(Values::words).collect(Collectors.joining(", "));
    }
    return value.toString();
  }

  /** A number with its unit, left out where it only says that there is none. */
  static String withUnit(@Nullable Object value, String unit) {
    boolean bare =
        unit.isEmpty()
            || !(value instanceof Number)
            || unit.matches("1|ratio|share|probability|count");
    return words(value) + (bare ? "" : " " + unit);
  }

  private static String number(double value) {
    if (Double.isNaN(value)) {
      return "not given";
    }
    if (Double.isInfinite(value)) {
      return "without limit";
    }
    return BigDecimal.valueOf(value)
        .setScale(DECIMALS, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String split(String camel) {
    return camel.replaceAll("(?<=[a-z])(?=[A-Z0-9])", " ").toLowerCase(Locale.ROOT);
  }
}
