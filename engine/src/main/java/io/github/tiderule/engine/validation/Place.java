package io.github.tiderule.engine.validation;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;

/**
 * A place in a record that is checked, where violations are noted under their whole path. What a
 * caller without a checker of nulls left out is a violation here, never an exception.
 *
 * @param path such as {@code observations[3]}; empty for the record itself
 * @param found gathers the violations of all places
 */
record Place(String path, List<Violation> found) {

  /** The place of a part. */
  Place of(String part) {
    return new Place(path.isEmpty() ? part : path + "." + part, found);
  }

  void note(Violation violation) {
    found.add(violation.within(path));
  }

  void note(Optional<Violation> violation) {
    violation.ifPresent(this::note);
  }

  void note(List<Violation> violations) {
    violations.forEach(this::note);
  }

  /** Notes what is missing; whether it is there. */
  boolean has(String name, @Nullable Object value) {
    if (value == null) {
      note(Presence.missing(name));
    }
    return value != null;
  }

  void number(String name, @Nullable Double value, Range range) {
    if (value != null) {
      note(Violation.outside(range, name, value, Range.plain(value)));
    }
  }

  void whole(String name, @Nullable Integer value, Range range) {
    number(name, value == null ? null : Double.valueOf(value), range);
  }

  void text(String name, @Nullable String value, int longest) {
    if (value != null) {
      note(Legibility.violation(name, value, longest));
    }
  }

  /** Notes a day that a check refuses. */
  void day(
      String name,
      @Nullable LocalDate day,
      BiFunction<String, LocalDate, Optional<Violation>> check) {
    if (day != null) {
      note(check.apply(name, day));
    }
  }

  /** Checks every part in a list, and how many there are. */
  <E> void parts(String name, @Nullable List<E> parts, int most, BiConsumer<Place, E> check) {
    values(name, parts, most, (entry, part) -> check.accept(of(entry), part));
  }

  /** Checks every value in a list under its own name, and how many there are. */
  <E> void values(String name, @Nullable List<E> values, int most, BiConsumer<String, E> check) {
    if (values == null) {
      note(Presence.missing(name));
      return;
    }
    note(Presence.tooMany(name, values.size(), most));
    for (int i = 0; i < values.size() && i < most; i++) {
      E value = values.get(i);
      String entry = name + "[" + i + "]";
      if (has(entry, value)) {
        check.accept(entry, value);
      }
    }
  }

  /** Checks a list of words that cannot be too many: that none is missing. */
  void words(String name, @Nullable List<?> words) {
    values(name, words, Integer.MAX_VALUE, (entry, word) -> {});
  }
}
