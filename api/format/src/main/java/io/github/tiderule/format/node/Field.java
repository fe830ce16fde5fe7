package io.github.tiderule.format.node;

import io.github.tiderule.engine.validation.Legibility;
import io.github.tiderule.engine.validation.Presence;
import io.github.tiderule.engine.validation.Range;
import io.github.tiderule.engine.validation.Violation;
import io.github.tiderule.format.problem.NearMiss;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.fact.Worded;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One field of an object, or one entry of a list, that may be absent.
 *
 * <p>Every reading method gives {@code null} when the field is absent, or when it is not what the
 * method reads; the latter is noted as a problem.
 */
public final class Field {

  private final String name;
  private final Pointer at;
  private final @Nullable Node node;
  private final Problems problems;

  Field(String name, Pointer at, @Nullable Node node, Problems problems) {
    this.name = name;
    this.at = at;
    this.node = node;
    this.problems = problems;
  }

  /** The field's name, with the place in the list for an entry. */
  public String name() {
    return name;
  }

  /** Where it stands, or should. */
  public Pointer at() {
    return at;
  }

  /** Whether something stands there. */
  public boolean isPresent() {
    return node != null;
  }

  /** Notes a problem with this field. */
  public void refuse(ProblemCode code, String message) {
    problems.add(at, code, message);
  }

  /** Notes a problem with this field. */
  public void refuse(ProblemCode code, String message, String hint) {
    problems.add(at, code, message, hint);
  }

  /** Notes what a check found of this field. */
  public void refuse(Violation violation) {
    problems.add(at, violation);
  }

  /** What was read, unless a check found something, which is noted. */
  public <E> @Nullable E accepted(E read, Optional<Violation> violation) {
    violation.ifPresent(this::refuse);
    return violation.isPresent() ? null : read;
  }

  private void wrongType(Node found, String wanted) {
    refuse(
        ProblemCode.WRONG_TYPE,
        name + " is " + Shown.of(found) + ", which is " + found.typeName() + ", not " + wanted);
  }

  private @Nullable String plainText(String wanted) {
    if (node instanceof Node.Text text) {
      return text.value();
    }
    if (node != null) {
      wrongType(node, wanted);
    }
    return null;
  }

  /** A text, whatever is in it. */
  public @Nullable String anyText() {
    return plainText("a text");
  }

  /** A text of at most {@code longest} characters, with at least one that can be seen. */
  public @Nullable String text(int longest) {
    String text = plainText("a text");
    return text == null ? null : accepted(text, Legibility.violation(name, text, longest));
  }

  /** A finite number, not negative, within a range. */
  public @Nullable Double number(Range range) {
    return number(
        range,
        " If the minus sign stood for \"below\", use the comparator \"<\".",
        value -> Optional.empty());
  }

  /**
   * A finite number within a range that has nothing to do with a laboratory's limits.
   *
   * @param meant what a number outside the range may have meant, as a hint
   */
  public @Nullable Double measure(Range range, DoubleFunction<Optional<String>> meant) {
    return number(range, "", meant);
  }

  private @Nullable Double number(
      Range range, String ofMinus, DoubleFunction<Optional<String>> meant) {
    if (node instanceof Node.Text text) {
      String message = name + " is the text " + Shown.of(node) + ", not a number";
      Optional<String> plain = Numerals.meant(text.value());
      if (plain.isPresent()) {
        refuse(ProblemCode.NOT_A_NUMBER, message, plain.get());
      } else {
        refuse(ProblemCode.NOT_A_NUMBER, message);
      }
      return null;
    }
    if (!(node instanceof Node.Digits digits)) {
      if (node != null) {
        wrongType(node, "a number");
      }
      return null;
    }
    OptionalDouble value = Numerals.finite(digits.written());
    if (value.isEmpty()) {
      refuse(ProblemCode.NOT_A_NUMBER, name + " is " + Shown.of(node) + ", not a finite number");
      return null;
    }
    double number = value.getAsDouble();
    return accepted(
        number,
        Violation.outside(range, name, number, Shown.of(node))
            .map(
                found ->
                    found.code() == Violation.Code.NEGATIVE_VALUE
                        ? found.hint(
                            "Maybe " + digits.written().replaceFirst("^-", "") + "?" + ofMinus)
                        : meant.apply(number).map(found::hint).orElse(found)));
  }

  /** A whole number within a range. */
  public @Nullable Integer wholeNumber(Range range) {
    Double value = number(range);
    if (value != null && value != Math.rint(value)) {
      refuse(ProblemCode.NOT_A_WHOLE_NUMBER, name + " is " + value + ", not a whole number");
      return null;
    }
    return value == null ? null : value.intValue();
  }

  /** {@code true} or {@code false}. */
  public @Nullable Boolean flag() {
    if (node instanceof Node.Flag flag) {
      return flag.value();
    }
    if (node != null) {
      wrongType(node, "true or false");
    }
    return null;
  }

  /** A word of an enumeration. */
  public <E extends Enum<E> & Worded> @Nullable E word(Class<E> type) {
    List<String> words = Arrays.stream(type.getEnumConstants()).map(Worded::word).toList();
    return word(type, text -> NearMiss.of(text, words));
  }

  /**
   * A word of an enumeration.
   *
   * @param guess the word a wrong one may have meant
   */
  public <E extends Enum<E> & Worded> @Nullable E word(
      Class<E> type, Function<String, Optional<String>> guess) {
    List<E> constants = List.of(type.getEnumConstants());
    return oneOf(constants, constants.stream().map(Worded::word).toList(), guess);
  }

  /** A constant of an enumeration, by its Java name. */
  public <E extends Enum<E>> @Nullable E constant(Class<E> type) {
    List<E> constants = List.of(type.getEnumConstants());
    List<String> names = constants.stream().map(Enum::name).toList();
    return oneOf(constants, names, text -> NearMiss.of(text, names));
  }

  private <E> @Nullable E oneOf(
      List<E> constants, List<String> words, Function<String, Optional<String>> guess) {
    String text = plainText("a word");
    if (text == null) {
      return null;
    }
    int place = words.indexOf(text);
    if (place >= 0) {
      return constants.get(place);
    }
    String meant = guess.apply(text).map(word -> "Maybe \"" + word + "\"? ").orElse("");
    refuse(
        ProblemCode.UNKNOWN_WORD,
        name + " is " + Shown.quoted(text) + ", a word not known here",
        meant + "Allowed: " + String.join(", ", words) + ".");
    return null;
  }

  /**
   * A date and time with its offset.
   *
   * @param zone the zone a hint may complete a local time with, if known
   */
  public @Nullable Instant instant(@Nullable ZoneId zone) {
    String text = plainText("a date and time in quotes");
    return text == null ? null : Times.instant(name, text, zone, at, problems);
  }

  /** A date. */
  public @Nullable LocalDate day() {
    String text = plainText("a date in quotes");
    return text == null ? null : Times.day(name, text, at, problems);
  }

  /** A time of day, hours and minutes. */
  public @Nullable LocalTime time() {
    String text = plainText("a time of day in quotes");
    return text == null ? null : Times.time(name, text, at, problems);
  }

  /** The entries of a list; none when it is absent, not a list, or longer than {@code most}. */
  public List<Field> entries(int most) {
    if (!(node instanceof Node.Entries entries)) {
      if (node != null) {
        wrongType(node, "a list");
      }
      return List.of();
    }
    int size = entries.all().size();
    if (accepted(entries, Presence.tooMany(name, size, most)) == null) {
      return List.of();
    }
    List<Field> fields = new ArrayList<>(size);
    for (int i = 0; i < size; i++) {
      fields.add(new Field(name + "[" + i + "]", at.child(i), entries.all().get(i), problems));
    }
    return fields;
  }

  /** The fields of an object. */
  public @Nullable Fields members() {
    if (node instanceof Node.Members members) {
      return new Fields(members, at, problems);
    }
    if (node != null) {
      wrongType(node, "an object");
    }
    return null;
  }
}
