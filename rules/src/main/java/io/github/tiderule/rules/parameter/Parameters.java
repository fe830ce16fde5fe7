package io.github.tiderule.rules.parameter;

import io.github.tiderule.rules.source.Table;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;

/** All parameters, by id. Immutable. */
public final class Parameters {

  private static final List<String> SCOPES =
      List.of(
          "reading",
          "findings",
          "days",
          "next",
          "care",
          "timeline",
          "eggs",
          "planning",
          "whelping",
          "insemination",
          "seasons");

  private static final List<String> TABLES = List.of("curve", "assay", "plateau", "neutrophils");

  private final SortedMap<String, Parameter> byId;
  private final Map<String, Parameter> found;
  private final Map<String, List<Parameter>> byScope;

  private Parameters(SortedMap<String, Parameter> byId) {
    this.byId = byId;
    this.found = Map.copyOf(byId);
    this.byScope = byId.values().stream().collect(Collectors.groupingBy(Parameter::scope));
  }

  /**
   * Reads the parameter files that come with the rules.
   *
   * @throws IllegalStateException if a file is missing, malformed or names an id twice
   */
  public static Parameters load() {
    SortedMap<String, Parameter> byId = new TreeMap<>();
    for (String scope : SCOPES) {
      for (CSVRecord row : Table.of(resource(scope)).rows()) {
        Parameter parameter = read(row);
        if (!parameter.scope().equals(scope)) {
          throw new IllegalStateException(
              "parameter " + parameter.id() + " stands in the file of " + scope);
        }
        if (byId.put(parameter.id(), parameter) != null) {
          throw new IllegalStateException("parameter " + parameter.id() + " stands twice");
        }
      }
    }
    return new Parameters(byId);
  }

  /**
   * These parameters with some values replaced.
   *
   * @throws IllegalArgumentException if the overlay changes a parameter that is not here
   */
  public Parameters with(Overlay overlay) {
    SortedMap<String, Parameter> changed = new TreeMap<>(byId);
    for (Overlay.Change change : overlay.changes()) {
      Parameter usual = changed.get(change.id());
      if (usual == null) {
        throw new IllegalArgumentException("no parameter " + change.id());
      }
      changed.put(
          change.id(),
          new Parameter(
              usual.id(),
              change.value(),
              usual.unit(),
              usual.min(),
              usual.max(),
              usual.source(),
              "local protocol: " + change.reason(),
              change.since(),
              usual.meaning()));
    }
    return new Parameters(changed);
  }

  /** The resource that holds the parameters of a scope. */
  private static String resource(String scope) {
    return "/io/github/tiderule/parameters/" + scope + ".csv";
  }

  /** The population curve: days from the LH peak, ng/mL by radioimmunoassay. */
  public static Table curve() {
    return Table.of(resource("curve"));
  }

  /** How each method reads against radioimmunoassay, and how well it repeats. */
  public static Table assays() {
    return Table.of(resource("assay"));
  }

  /** The plateaus that are thought of: length in days, level in ng/mL, relative weight. */
  public static Table plateaus() {
    return Table.of(resource("plateau"));
  }

  /** The chance of no, few and many neutrophils in a smear, by phase of the season. */
  public static Table neutrophils() {
    return Table.of(resource("neutrophils"));
  }

  /** The resources all parameters come from, in a fixed order. */
  public static List<String> resources() {
    return Stream.concat(SCOPES.stream(), TABLES.stream()).map(Parameters::resource).toList();
  }

  private static Parameter read(CSVRecord row) {
    return new Parameter(
        row.get("id"),
        Double.parseDouble(row.get("value")),
        row.get("unit"),
        Double.parseDouble(row.get("min")),
        Double.parseDouble(row.get("max")),
        row.get("source"),
        row.get("read"),
        LocalDate.parse(row.get("since")),
        row.get("meaning"));
  }

  /**
   * The value of a parameter.
   *
   * @throws IllegalArgumentException if there is no such parameter
   */
  public double value(String id) {
    return find(id).orElseThrow(() -> new IllegalArgumentException("no parameter " + id)).value();
  }

  /** The parameter of an id, if there is one. */
  public Optional<Parameter> find(String id) {
    return Optional.ofNullable(found.get(id));
  }

  /** All parameters, by id. */
  public Collection<Parameter> all() {
    return byId.values();
  }

  /** The parameters of one scope, by id. */
  public List<Parameter> of(String scope) {
    return byScope.getOrDefault(scope, List.of());
  }

  /** Parameters as a map from id to parameter; unmodifiable. */
  public Map<String, Parameter> byId() {
    return found;
  }
}
