package io.github.tiderule.rules.sentence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Something told: a template and what fills its places. Immutable.
 *
 * <p>Its {@link #toString} is the sentence in English with observations by their ids and days as in
 * files, as answers carry it to other programs.
 */
public final class Sentence {

  private final String template;
  private final List<Part> parts;
  private @Nullable String plain;

  private Sentence(String template, List<Part> parts) {
    this.template = template;
    this.parts = List.copyOf(parts);
  }

  /**
   * A sentence that takes no number from a parameter.
   *
   * @param template with one empty place for each thing
   * @param things what is told of, in the order of the places
   * @throws IllegalArgumentException if there are more or fewer places, or one takes a parameter
   */
  public static Sentence of(String template, Object... things) {
    return filled(
        template,
        things,
        name -> {
          throw new IllegalArgumentException("no parameter " + name + " is at hand: " + template);
        });
  }

  /** Words of somebody's own, which are never put into another language. */
  public static Sentence quoted(String words) {
    return of("{}", Part.quote(words));
  }

  static Sentence filled(
      String template, Object[] things, Function<String, Part.Quantity> parameters) {
    List<Part> parts = new ArrayList<>();
    int taken = 0;
    for (Template.Place place : Template.of(template).places()) {
      if (!place.name().isEmpty()) {
        parts.add(parameters.apply(place.name()));
      } else if (taken < things.length) {
        parts.add(Part.of(things[taken]));
        taken++;
      } else {
        throw new IllegalArgumentException("a place stays empty: " + template);
      }
    }
    if (taken < things.length) {
      throw new IllegalArgumentException(
          "no place for " + Arrays.asList(things).subList(taken, things.length) + ": " + template);
    }
    return new Sentence(template, parts);
  }

  /** The template: English, with places in braces. The key of other languages. */
  public String template() {
    return template;
  }

  /** What fills the places, in their order. */
  public List<Part> parts() {
    return parts;
  }

  /** The days it names, those of sentences within it too. */
  public List<LocalDate> days() {
    return days(parts).toList();
  }

  /** The day it begins with, written as in files: what it is about, as a reason for a day is. */
  public Optional<LocalDate> firstDay() {
    return template.startsWith("{")
            && parts.get(0) instanceof Part.Day day
            && day.form() == Part.DayForm.FILE
        ? Optional.of(day.day())
        : Optional.empty();
  }

  private static Stream<LocalDate> days(List<Part> parts) {
    return parts.stream()
        .flatMap(
            part -> {
              if (part instanceof Part.Day day) {
                return Stream.of(day.day());
              }
              if (part instanceof Part.Time time) {
                return Stream.of(time.at().toLocalDate());
              }
              if (part instanceof Part.Drawn drawn) {
                return Stream.of(drawn.day());
              }
              if (part instanceof Part.Several several) {
                return days(several.parts());
              }
              return part instanceof Part.Inner inner ? days(inner.sentence().parts) : Stream.of();
            });
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Sentence sentence
        && sentence.template.equals(template)
        && sentence.parts.equals(parts);
  }

  @Override
  public int hashCode() {
    return 31 * template.hashCode() + parts.hashCode();
  }

  @Override
  public String toString() {
    String said = plain;
    if (said == null) {
      said = Phrasing.PLAIN.say(this);
      plain = said;
    }
    return said;
  }
}
