package io.github.tiderule.format.laboratory;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.cycle.UnitSpelling;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.Shown;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Finds in a laboratory's table what is new for a season. Saves nothing. */
public final class LaboratoryFile {

  private static final DateTimeFormatter WRITTEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX");

  private final CycleRecord cycle;
  private final Cells cells;
  private final boolean hasFemales;
  private final KnownResults known;

  private LaboratoryFile(CycleRecord cycle, Columns columns, Set<String> taken) {
    this.cycle = cycle;
    this.cells = new Cells(columns, cycle.zone());
    this.hasFemales = columns.names().containsKey(Columns.Part.FEMALE);
    this.known = KnownResults.of(cycle, taken);
  }

  /**
   * What would become of each line; empty, with problems noted, when the file cannot be used at
   * all.
   *
   * @param taken ids that no new observation may have, beside those of the season
   * @param where pointer to the file, for the problems
   */
  public static Optional<List<Line>> preview(
      String text,
      Columns columns,
      CycleRecord cycle,
      Set<String> taken,
      Pointer where,
      Problems problems) {
    LaboratoryFile file = new LaboratoryFile(cycle, columns, taken);
    return Table.read(text, columns, where, problems)
        .map(table -> table.rows().stream().map(file::line).toList());
  }

  private Line line(Table.Row row) {
    try {
      mustBeHers(row.cell(Columns.Part.FEMALE));
      return checked(row.line(), observation(row));
    } catch (Unusable e) {
      return Line.refused(row.line(), e.getMessage() + ".");
    }
  }

  private void mustBeHers(@Nullable String cell) throws Unusable {
    if (!hasFemales) {
      return;
    }
    boolean hers =
        cell != null
            && (cell.equalsIgnoreCase(cycle.female().name())
                || cell.equalsIgnoreCase(cycle.female().id()));
    if (!hers) {
      throw new Unusable(
          "it is for "
              + (cell == null ? "nobody named" : Shown.quoted(cell))
              + ", and the season is not known to be hers");
    }
  }

  private Node.Members observation(Table.Row row) throws Unusable {
    String written = row.cell(Columns.Part.VALUE);
    String at = row.cell(Columns.Part.AT);
    if (written == null || at == null) {
      throw new Unusable(written == null ? "there is no value" : "there is no date");
    }
    Cells.Amount amount = cells.amount(written);
    Instant moment = cells.moment(at, row.cell(Columns.Part.TIME));
    Map<String, Node> fields = new LinkedHashMap<>();
    fields.put("id", new Node.Text(known.freshId(moment)));
    fields.put("kind", new Node.Text("progesterone"));
    fields.put("at", new Node.Text(WRITTEN.format(moment.atZone(cycle.zone()))));
    fields.put("value", new Node.Digits(amount.digits()));
    if (amount.comparator() != null) {
      fields.put("comparator", new Node.Text(amount.comparator()));
    }
    String unit = row.cell(Columns.Part.UNIT);
    if (unit != null) {
      Unit known =
          UnitSpelling.of(unit)
              .orElseThrow(() -> new Unusable("the unit is " + Shown.quoted(unit)));
      fields.put("unit", new Node.Text(known.word()));
    }
    String method = row.cell(Columns.Part.METHOD);
    if (method != null) {
      fields.put("method", new Node.Text(method(method)));
    }
    String laboratory = row.cell(Columns.Part.LABORATORY);
    if (laboratory != null) {
      fields.put("laboratory", new Node.Text(laboratory));
    }
    fields.put("asReported", new Node.Text(unit == null ? written : written + " " + unit));
    return new Node.Members(fields);
  }

  private static String method(String cell) throws Unusable {
    String word = cell.toLowerCase(Locale.ROOT);
    List<String> words = Arrays.stream(Method.values()).map(Method::word).toList();
    if (!words.contains(word)) {
      throw new Unusable(
          "the method is " + Shown.quoted(cell) + ", not one of " + String.join(", ", words));
    }
    return word;
  }

  /** Reads the observation as a cycle file would have it, and compares it with what is known. */
  private Line checked(int number, Node.Members observation) {
    Reading reading = known.reading(observation);
    if (reading instanceof Reading.Refused refused) {
      return Line.refused(
          number,
          refused.problems().stream()
              .map(problem -> problem.message() + ". " + problem.hint())
              .distinct()
              .collect(Collectors.joining(" ")));
    }
    Progesterone value = KnownResults.only((Reading.Read) reading);
    Optional<Progesterone> same = known.same(value);
    if (same.isPresent()) {
      return new Line(number, Line.Outcome.DUPLICATE, "It is " + same.get().id() + ".", null);
    }
    Optional<Progesterone> other = known.drawnTogether(value);
    if (other.isPresent()) {
      return Line.refused(
          number,
          "it differs from "
              + other.get().id()
              + ", drawn at the same time; if that one is wrong, correct it.");
    }
    known.put(value);
    return new Line(number, Line.Outcome.NEW, "", observation);
  }

  /** The new observations, in the order of the lines. */
  public static List<Node.Members> added(List<Line> lines) {
    return lines.stream().map(Line::observation).flatMap(Stream::ofNullable).toList();
  }
}
