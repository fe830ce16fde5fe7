package io.github.tiderule.format.laboratory;

import io.github.tiderule.format.node.Shown;
import io.github.tiderule.format.problem.NearMiss;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Which column of the table holds what, and how it writes dates and decimals.
 *
 * <p>Written as in {@code at=Drawn,value=Result,unit=Unit,dates=day-first}. A column's name may
 * hold anything but a comma.
 *
 * @param names the column of each part
 * @param dates the order of day and month where they are written with strokes
 * @param decimals the mark before decimals
 */
public record Columns(Map<Part, String> names, @Nullable Dates dates, @Nullable Decimals decimals) {

  /** Parts of a row. */
  public enum Part {
    AT,
    TIME,
    VALUE,
    UNIT,
    FEMALE,
    METHOD,
    LABORATORY
  }

  /** Order of day and month. */
  public enum Dates {
    DAY_FIRST,
    MONTH_FIRST
  }

  /** Mark before decimals. */
  public enum Decimals {
    COMMA,
    POINT
  }

  private static final int LONGEST = 1000;
  private static final List<String> KEYS =
      List.of("at", "time", "value", "unit", "female", "method", "laboratory", "dates", "decimals");

  /** Keeps a copy of the map. */
  public Columns {
    names = Map.copyOf(names);
  }

  /**
   * Reads what a person wrote; empty, with problems noted, when it cannot be used.
   *
   * @param where pointer to it, for the problems
   */
  public static Optional<Columns> read(String text, Pointer where, Problems problems) {
    Map<Part, String> names = new EnumMap<>(Part.class);
    Dates dates = null;
    Decimals decimals = null;
    boolean good = text.length() <= LONGEST;
    if (!good) {
      problems.add(
          where, ProblemCode.TOO_LONG, "columns is longer than " + LONGEST + " characters");
    }
    for (String piece : good ? text.split(",", -1) : new String[0]) {
      int equals = piece.indexOf('=');
      String key = equals < 0 ? piece.strip() : piece.substring(0, equals).strip();
      String value = equals < 0 ? "" : piece.substring(equals + 1).strip();
      boolean taken;
      if (key.equals("dates")) {
        dates = word(Dates.class, value);
        taken = dates != null;
      } else if (key.equals("decimals")) {
        decimals = word(Decimals.class, value);
        taken = decimals != null;
      } else {
        Part part = word(Part.class, key);
        taken = part != null && !value.isEmpty() && names.put(part, value) == null;
      }
      if (!taken) {
        good = false;
        refuse(piece, key, where, problems);
      }
    }
    for (Part needed : List.of(Part.AT, Part.VALUE)) {
      if (good && !names.containsKey(needed)) {
        good = false;
        problems.add(
            where,
            ProblemCode.MISSING_FIELD,
            "columns does not say which column is " + needed.name().toLowerCase(Locale.ROOT),
            "Write it like at=Drawn,value=Result,unit=Unit.");
      }
    }
    return good ? Optional.of(new Columns(names, dates, decimals)) : Optional.empty();
  }

  private static void refuse(String piece, String key, Pointer where, Problems problems) {
    String near = NearMiss.of(key, KEYS).map(one -> "Maybe " + one + "=? ").orElse("");
    problems.add(
        where,
        ProblemCode.UNKNOWN_WORD,
        "columns has " + Shown.quoted(piece) + ", which says nothing known here, or says it twice",
        near
            + "Allowed, each once: "
            + String.join("=, ", KEYS)
            + "=; dates is day-first or month-first, decimals is comma or point.");
  }

  private static <E extends Enum<E>> @Nullable E word(Class<E> type, String text) {
    return Arrays.stream(type.getEnumConstants())
        .filter(one -> one.name().toLowerCase(Locale.ROOT).replace('_', '-').equals(text))
        .findFirst()
        .orElse(null);
  }
}
