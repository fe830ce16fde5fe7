package io.github.tiderule.format.json;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import io.github.tiderule.format.Documents;
import java.util.List;

/** The published schemas, with formats asserted. */
public final class Schemas {

  private static final SchemaRegistry REGISTRY =
      SchemaRegistry.withDefaultDialect(
          SpecificationVersion.DRAFT_2020_12,
          registry ->
              registry.schemaRegistryConfig(
                  SchemaRegistryConfig.builder().formatAssertionsEnabled(true).build()));

  private static final Schema CYCLE = load("cycle-1");
  private static final Schema ADVICE = load("advice-1");
  private static final Schema PROBLEMS = load("problems-1");
  private static final Schema RULEBOOK = load("rulebook-1");
  private static final Schema CHANGES = load("changes-1");
  private static final Schema STUD = load("stud-1");
  private static final Schema ACCURACY = load("accuracy-1");

  private Schemas() {}

  private static Schema load(String name) {
    return REGISTRY.getSchema(
        Documents.resource("/io/github/tiderule/schema/" + name + ".schema.json"),
        InputFormat.JSON);
  }

  /** What a schema has against a cycle file; nothing when it is valid. */
  public static List<String> againstCycle(String json) {
    return against(CYCLE, json);
  }

  /** What a schema has against advice. */
  public static List<String> againstAdvice(String json) {
    return against(ADVICE, json);
  }

  /** What a schema has against a refusal. */
  public static List<String> againstProblems(String json) {
    return against(PROBLEMS, json);
  }

  /** What a schema has against a rule book. */
  public static List<String> againstRulebook(String json) {
    return against(RULEBOOK, json);
  }

  /** What a schema has against whelpings beside their forecasts. */
  public static List<String> againstAccuracy(String json) {
    return against(ACCURACY, json);
  }

  /** What a schema has against what changed. */
  public static List<String> againstChanges(String json) {
    return against(CHANGES, json);
  }

  /** What a schema has against the services of a stud. */
  public static List<String> againstStud(String json) {
    return against(STUD, json);
  }

  private static List<String> against(Schema schema, String json) {
    return schema.validate(json, InputFormat.JSON).stream().map(Object::toString).toList();
  }
}
