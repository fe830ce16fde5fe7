package io.github.tiderule.format.laboratory;

import io.github.tiderule.engine.LaboratoryScale.Pair;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.fact.assay.Unit;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * The same blood at two laboratories: a table of comma-separated values with the heading {@code
 * value,unit,other,otherUnit}. Limits and values without a unit tell no scale and are refused.
 */
public final class PairTable {

  private static final List<String> HEADING = List.of("value", "unit", "other", "otherUnit");
  private static final int MOST = 500;
  private static final double HIGHEST = 1000;

  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setIgnoreEmptyLines(true).setCommentMarker('#').get();

  private PairTable() {}

  /** The pairs in the order of the lines; empty, with problems noted, where one is wrong. */
  public static Optional<List<Pair>> read(String text, Problems problems) {
    List<Pair> pairs = new ArrayList<>();
    try (CSVParser parser =
        CSVParser.parse(text.startsWith("\uFEFF") ? text.substring(1) : text, FORMAT)) {
      boolean heading = true;
      for (CSVRecord row : parser) {
        List<String> cells = row.stream().map(String::strip).toList();
        Pointer at = Pointer.ROOT.child("line " + parser.getCurrentLineNumber());
        if (!heading) {
          pair(cells, at, problems).ifPresent(pairs::add);
        } else if (!cells.equals(HEADING)) {
          problems.add(
              at, ProblemCode.WRONG_HEADING, "the heading is not " + String.join(",", HEADING));
          return Optional.empty();
        }
        heading = false;
      }
    } catch (IOException | UncheckedIOException | IllegalStateException e) {
      problems.add(
          Pointer.ROOT, ProblemCode.NOT_A_TABLE, "it is not a table of comma-separated values");
    }
    if (problems.none() && pairs.isEmpty()) {
      problems.add(Pointer.ROOT, ProblemCode.EMPTY_FILE, "there is no pair in it");
    } else if (pairs.size() > MOST) {
      problems.add(
          Pointer.ROOT,
          ProblemCode.TOO_MANY,
          "it has " + pairs.size() + " pairs; " + MOST + " are the most");
    }
    return problems.none() ? Optional.of(List.copyOf(pairs)) : Optional.empty();
  }

  private static Optional<Pair> pair(List<String> cells, Pointer at, Problems problems) {
    if (cells.size() != HEADING.size()) {
      problems.add(
          at,
          ProblemCode.NOT_A_TABLE,
          "there are " + cells.size() + " cells, not " + HEADING.size());
      return Optional.empty();
    }
    double value = level(cells.get(0), cells.get(1), at, "", problems);
    double other = level(cells.get(2), cells.get(3), at, "other", problems);
    return Double.isNaN(value) || Double.isNaN(other)
        ? Optional.empty()
        : Optional.of(new Pair(value, other));
  }

  /** In ng/mL; not a number, with a problem noted, where it is none. */
  private static double level(
      String number, String unit, Pointer at, String which, Problems problems) {
    Optional<Unit> known =
        Arrays.stream(Unit.values()).filter(one -> one.word().equals(unit)).findFirst();
    if (known.isEmpty()) {
      problems.add(
          at.child(which.isEmpty() ? "unit" : "otherUnit"),
          ProblemCode.UNKNOWN_WORD,
          "the unit is \"" + shown(unit) + "\"",
          "Write ng/mL, nmol/L or ug/L, as it is printed on the report.");
      return Double.NaN;
    }
    double value = number.matches("\\d{1,9}(\\.\\d{1,9})?") ? Double.parseDouble(number) : 0;
    if (!(value > 0 && value <= HIGHEST)) {
      problems.add(
          at.child(which.isEmpty() ? "value" : which),
          ProblemCode.NOT_A_NUMBER,
          "the value is \"" + shown(number) + "\"",
          "Write it like 4.7; leave the pair out where one is above or below the range.");
      return Double.NaN;
    }
    return known.get().toNgPerMl(value);
  }

  private static String shown(String text) {
    return text.length() > 40 ? text.substring(0, 40) + "…" : text;
  }
}
