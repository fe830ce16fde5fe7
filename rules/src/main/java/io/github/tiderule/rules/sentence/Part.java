package io.github.tiderule.rules.sentence;

import io.github.tiderule.rules.fact.Named;
import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Unit;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What fills a place of a template. */
public sealed interface Part {

  /** An observation, by its id. */
  record Key(String observation) implements Part {}

  /** An observation with the day it was drawn or seen on. */
  record Drawn(String observation, LocalDate day) implements Part {}

  /** Several things of one kind, one after the other. */
  record Several(List<Part> parts, Joint joint) implements Part {
    public Several {
      parts = List.copyOf(parts);
    }
  }

  /**
   * A progesterone concentration.
   *
   * @param ngPerMl in ng/mL
   * @param unit the one unit it is told in; absent for both
   */
  record Concentration(double ngPerMl, @Nullable Unit unit) implements Part {}

  /**
   * A number.
   *
   * @param parameter the id of the parameter it is; absent where it is none
   */
  record Quantity(double value, @Nullable String parameter) implements Part {}

  /** A number as a person wrote it; no digit of it is changed. */
  record Figure(double value) implements Part {}

  /** A day. */
  record Day(LocalDate day, DayForm form) implements Part {}

  /** A moment, where she is. */
  record Time(OffsetDateTime at, TimeForm form) implements Part {}

  /** A word of the trade. */
  record Term(Worded word) implements Part {}

  /** A laboratory with its method. */
  record Scale(Series series) implements Part {}

  /** Somebody's own words, such as a name; never put into another language. */
  record Quote(String words) implements Part {}

  /** A sentence within a sentence. */
  record Inner(Sentence sentence) implements Part {}

  /** How several things are joined. */
  enum Joint {
    /** With commas. */
    COMMAS,
    /** With commas, and an "and" before the last. */
    AND,
    /** With semicolons. */
    SEMICOLONS
  }

  /** How a day is written where no person's own way is known. */
  enum DayForm {
    /** As in files: {@code 2027-01-14}. */
    FILE,
    /** As in {@code Thu 14 Jan}. */
    SHORT,
    /** As in {@code Thu 14 Jan 2027}. */
    FULL
  }

  /** How a moment is written where no person's own way is known. */
  enum TimeForm {
    /** As in {@code 08:00}. */
    CLOCK,
    /** As in {@code Thu 14 Jan 08:00}. */
    SHORT,
    /** As in {@code Thu 14 Jan, 08:00}. */
    SHORT_COMMA,
    /** As in {@code Thu 14 Jan 2027, 08:00}. */
    FULL
  }

  /**
   * The part that tells of a thing.
   *
   * @throws IllegalArgumentException if the thing is of no kind that can be told of
   */
  static Part of(Object thing) {
    if (thing instanceof Part part) {
      return part;
    }
    if (thing instanceof Named named) {
      return new Key(named.named());
    }
    if (thing instanceof Number number) {
      return new Quantity(number.doubleValue(), null);
    }
    if (thing instanceof LocalDate day) {
      return new Day(day, DayForm.FILE);
    }
    if (thing instanceof Worded word) {
      return new Term(word);
    }
    if (thing instanceof Series series) {
      return new Scale(series);
    }
    if (thing instanceof Sentence sentence) {
      return new Inner(sentence);
    }
    throw new IllegalArgumentException(
        "nothing can be told of a " + thing.getClass().getSimpleName() + ": " + thing);
  }

  /** An observation, by its id. */
  static Part key(String observation) {
    return new Key(observation);
  }

  /** Observations, by their ids, with commas between them. */
  static Part keys(List<String> observations) {
    return new Several(observations.stream().map(Part::key).toList(), Joint.COMMAS);
  }

  /** Days, with commas between them. */
  static Part days(List<LocalDate> days) {
    return new Several(days.stream().map(Part::of).toList(), Joint.COMMAS);
  }

  /** A concentration in both units. */
  static Part both(double ngPerMl) {
    return new Concentration(ngPerMl, null);
  }

  /** A concentration in one unit. */
  static Part in(Unit unit, double ngPerMl) {
    return new Concentration(ngPerMl, unit);
  }

  /** A number as it was entered. */
  static Part figure(double value) {
    return new Figure(value);
  }

  /** Somebody's own words. */
  static Part quote(String words) {
    return new Quote(words);
  }
}
