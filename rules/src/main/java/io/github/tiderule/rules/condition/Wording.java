package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.condition.expression.Check;
import io.github.tiderule.rules.condition.expression.Comparison;
import io.github.tiderule.rules.condition.expression.Expression;
import io.github.tiderule.rules.condition.expression.Tokens;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Says what a test asks for and what it saw, given what a rule's conditions matched. */
final class Wording {

  private static final Map<String, String> SIGN_WORDS =
      Map.of(
          "==",
          "is",
          "!=",
          "is not",
          ">=",
          "at least",
          "<=",
          "at most",
          ">",
          "above",
          "<",
          "below",
          "in",
          "one of",
          "contains",
          "with",
          "not",
          "not reading like",
          "matches",
          "reading like");

  /** The same of a length of time. */
  private static final Map<String, String> LENGTH_WORDS =
      Map.of(">", "more than", "<", "less than");

  private static final Pattern HOURS =
      Pattern.compile("Hours\\.between\\( (\\S+), (\\S+) \\)( / 24)?");

  private static final Pattern RATIO = Pattern.compile("(\\w+) / (\\$\\w+)\\.\\1");

  private static final Pattern PACE =
      Pattern.compile(
          "Math\\.pow\\( (\\w+) / (\\$\\w+)\\.\\1, 24 / Hours\\.between\\( \\2\\.at, at \\) \\)");

  private static final Pattern ASKED = Pattern.compile("\\$\\w+\\.(\\w+)\\( (\\w+) \\)");

  private final RuleConditions rule;
  private final Map<String, @Nullable Object> names;
  private final Map<String, String> units = new HashMap<>();

  Wording(RuleConditions rule, @Nullable Object[] match) {
    this.rule = rule;
    this.names = rule.named(match);
    for (Condition condition : rule.conditions()) {
      if (match[condition.place()] instanceof Parameter parameter) {
        rule.places()
            .forEach(
                (name, place) -> {
                  if (condition.bindings().stream().anyMatch(b -> b.place() == place)) {
                    units.put(name, parameter.unit());
                  }
                });
      }
    }
  }

  /** What a test asks for. */
  Sentence asks(Check check) {
    return joined(
        "{} or {}",
        Tokens.ofTest(check.text()).cut(List.of("||")).stream().map(this::all).distinct());
  }

  private Sentence all(Tokens test) {
    return joined("{} and {}", test.cut(List.of("&&")).stream().map(this::one));
  }

  private static Sentence joined(String template, Stream<Sentence> all) {
    return all.reduce((first, next) -> Sentence.of(template, first, next)).orElseThrow();
  }

  /** The value a test saw in a fact; absent where it cannot be told. */
  @Nullable Sentence saw(Check check, Object fact) {
    List<Sentence> seen = new ArrayList<>();
    for (Tokens part : Tokens.ofTest(check.text()).cut(List.of("||", "&&"))) {
      Tokens left = part.cut(Comparison.SIGNS).get(0);
      String property = left.toString();
      try {
        String unit =
            property.startsWith("Hours.") ? (property.endsWith("/ 24") ? "day" : "h") : "";
        seen.add(
            Values.of(
                property,
                Expression.value(left, fact, names, rule.imports()),
                unit.isEmpty() ? Values.unit(property) : unit));
      } catch (Expression.MissingValue e) {
        seen.add(Values.NOT_GIVEN);
      } catch (IllegalArgumentException e) {
        // of a form not known here: the test as written is shown all the same
      }
    }
    return seen.isEmpty() ? null : Values.listed(seen.stream().distinct().toList());
  }

  private Sentence one(Tokens test) {
    String sign = test.first(Comparison.SIGNS);
    if (sign.isEmpty()) {
      return Sentence.quoted(test.toString());
    }
    List<Tokens> sides = test.cut(Comparison.SIGNS);
    String left = sides.get(0).toString();
    Tokens right = sides.get(sides.size() - 1);
    String bound = right.toString();
    if (bound.equals("null")) {
      return Sentence.of(sign.equals("==") ? "{} not given" : "{} given", property(left));
    }
    if (bound.equals("true") || bound.equals("false")) {
      return bound.equals("true") ? property(left) : Sentence.of("not {}", property(left));
    }
    if (left.equals("series") && sign.equals("==")) {
      return Sentence.of("of the same laboratory and method as {}", value(owner(bound), ""));
    }
    Matcher hours = HOURS.matcher(left);
    if (hours.matches()) {
      return elapsed(hours, sign, right);
    }
    String unit = units.getOrDefault(bound, Values.unit(left));
    return Sentence.of(
        "{} {} {}",
        measure(left),
        Values.plain(SIGN_WORDS.getOrDefault(sign, sign)),
        sign.equals("in") ? list(right) : value(left, right, unit));
  }

  private static Sentence property(String name) {
    return Values.plain(Values.property(name));
  }

  /** What the left side of a comparison measures. */
  private Sentence measure(String left) {
    Matcher ratio = RATIO.matcher(left);
    if (ratio.matches()) {
      return Sentence.of("ratio to {}", value(new Tokens(ratio.group(2)), ""));
    }
    Matcher pace = PACE.matcher(left);
    if (pace.matches()) {
      return Sentence.of("rise per day since {}", value(new Tokens(pace.group(2)), ""));
    }
    Matcher asked = ASKED.matcher(left);
    if (asked.matches()) {
      return Sentence.of("{} {}", property(asked.group(1)), property(asked.group(2)));
    }
    return property(left);
  }

  private Sentence list(Tokens right) {
    String text = right.toString();
    Tokens inside = new Tokens(text.substring(text.indexOf('(') + 1, text.lastIndexOf(')')));
    return Values.listed(inside.cut(List.of(",")).stream().map(item -> value(item, "")).toList());
  }

  private Sentence elapsed(Matcher hours, String sign, Tokens right) {
    boolean after = hours.group(1).startsWith("$");
    Sentence other = value(owner(after ? hours.group(1) : hours.group(2)), "");
    if (right.toString().equals("0")) {
      return Sentence.of(
          switch (sign) {
            case ">" -> after ? "later than {}" : "earlier than {}";
            case "==" -> "at the same time as {}";
            case "<" -> after ? "earlier than {}" : "later than {}";
            default -> after ? "not before {}" : "not after {}";
          },
          other);
    }
    String unit = hours.group(3) == null ? "h" : "day";
    return Sentence.of(
        after ? "{} {} after {}" : "{} {} before {}",
        Values.plain(LENGTH_WORDS.getOrDefault(sign, SIGN_WORDS.getOrDefault(sign, sign))),
        value(right, unit),
        other);
  }

  /** The name before the first dot: of {@code $a.series}, {@code $a}. */
  private static Tokens owner(String path) {
    int dot = path.indexOf('.');
    return new Tokens(dot < 0 ? path : path.substring(0, dot));
  }

  private Sentence value(Tokens expression, String unit) {
    return value("", expression, unit);
  }

  /**
   * The value of an expression.
   *
   * @param property what it is the value of
   */
  private Sentence value(String property, Tokens expression, String unit) {
    String text = expression.toString();
    try {
      @Nullable Object value = Expression.value(expression, null, names, rule.imports());
      if (value == null) {
        return Sentence.quoted(text);
      }
      return value instanceof Record
              && !(value instanceof io.github.tiderule.rules.fact.assay.Series)
          ? Values.fact(value)
          : Values.of(property, value, unit);
    } catch (Expression.MissingValue | IllegalArgumentException e) {
      return Sentence.quoted(text);
    }
  }
}
