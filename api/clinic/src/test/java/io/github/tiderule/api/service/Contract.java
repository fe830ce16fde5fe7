package io.github.tiderule.api.service;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import io.github.tiderule.format.Documents;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** The OpenAPI document as tests use it. */
final class Contract {

  /** One operation of the document. */
  record Operation(String method, String path, JsonNode item, JsonNode node) {

    String id() {
      return node.path("operationId").asText();
    }

    List<Integer> statuses() {
      List<Integer> all = new ArrayList<>();
      node.path("responses").fieldNames().forEachRemaining(s -> all.add(Integer.valueOf(s)));
      return all;
    }

    boolean isList() {
      return parameters().contains("limit");
    }

    boolean takesBody() {
      return node.has("requestBody");
    }

    List<String> parameters() {
      List<String> all = new ArrayList<>();
      for (JsonNode holder : List.of(item, node)) {
        for (JsonNode parameter : holder.path("parameters")) {
          all.add(parameter.path("$ref").asText().replaceFirst(".*/", ""));
        }
      }
      return all;
    }

    @Override
    public String toString() {
      return method + " " + path;
    }
  }

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String BASE = "https://contract.invalid/v1/";
  private static final JsonNode ROOT =
      JSON.valueToTree(
          new Load(LoadSettings.builder().build())
              .loadFromString(Documents.resource(BookRoutes.CONTRACT)));
  private static final SchemaRegistry REGISTRY = registry();
  private static final Map<String, Schema> SCHEMAS = new ConcurrentHashMap<>();

  private Contract() {}

  private static SchemaRegistry registry() {
    Map<String, String> texts = new HashMap<>();
    texts.put(BASE + "openapi.yaml", ROOT.toString());
    for (String name : List.of("cycle-1", "advice-1", "problems-1", "changes-1")) {
      // their own ids are for those who keep them apart; here they are found where they are served
      texts.put(
          BASE + "schemas/" + name + ".schema.json",
          Documents.resource("/io/github/tiderule/schema/" + name + ".schema.json")
              .replaceFirst("\"\\$id\": \"[^\"]*\",", ""));
    }
    return SchemaRegistry.withDefaultDialect(
        SpecificationVersion.DRAFT_2020_12,
        registry ->
            registry
                .schemas(texts)
                .schemaRegistryConfig(
                    SchemaRegistryConfig.builder().formatAssertionsEnabled(true).build()));
  }

  static List<Operation> operations() {
    List<Operation> all = new ArrayList<>();
    ROOT.path("paths")
        .properties()
        .forEach(
            path ->
                path.getValue()
                    .properties()
                    .forEach(
                        method -> {
                          if (!method.getKey().equals("parameters")) {
                            all.add(
                                new Operation(
                                    method.getKey().toUpperCase(Locale.ROOT),
                                    path.getKey(),
                                    path.getValue(),
                                    method.getValue()));
                          }
                        }));
    return all;
  }

  /** How many paths there are. */
  static int paths() {
    return ROOT.path("paths").size();
  }

  static Operation operation(String id) {
    return operations().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
  }

  /** The operation a request belongs to. */
  static Operation matching(String method, String path) {
    return operations().stream()
        .filter(one -> one.method().equals(method))
        .filter(one -> path.matches(one.path().replaceAll("\\{[a-z]+}", "[^/]+")))
        .min(Comparator.comparing(one -> one.path().contains("{")))
        .orElseThrow(() -> new AssertionError("not in the document: " + method + " " + path));
  }

  static JsonNode resolved(JsonNode node) {
    String reference = node.path("$ref").asText();
    return reference.startsWith("#/") ? ROOT.at(reference.substring(1)) : node;
  }

  /** The examples of what an operation is sent, by name. */
  static Map<String, JsonNode> sent(Operation operation) {
    Map<String, JsonNode> examples = new LinkedHashMap<>();
    operation
        .node()
        .at("/requestBody/content/application~1json/examples")
        .properties()
        .forEach(one -> examples.put(one.getKey(), one.getValue().path("value")));
    return examples;
  }

  /** What the document has against a body an operation is sent. */
  static List<String> againstSent(Operation operation, String json) {
    return against(operation.node().at("/requestBody/content/application~1json/schema"), json);
  }

  /** What the document has against an answer. */
  static List<String> againstAnswer(
      Operation operation, int status, String contentType, String body) {
    JsonNode response = resolved(operation.node().path("responses").path("" + status));
    if (response.isMissingNode()) {
      return List.of(operation + " never answers " + status + ", but did: " + body);
    }
    JsonNode content = response.path("content");
    if (content.isMissingNode()) {
      return body.isEmpty() ? List.of() : List.of(operation + " has a body with " + status);
    }
    String plain = contentType.replaceFirst(";.*", "").strip();
    JsonNode media = content.path(plain);
    if (media.isMissingNode()) {
      return List.of(operation + " answers " + status + " as " + contentType);
    }
    return plain.equals("application/json") || plain.endsWith("+json")
        ? against(media.path("schema"), body)
        : List.of();
  }

  /** What a schema of the document has against a value. */
  static List<String> against(JsonNode schema, String json) {
    return SCHEMAS
        .computeIfAbsent(schema.toString(), Contract::schema)
        .validate(json, InputFormat.JSON)
        .stream()
        .map(Object::toString)
        .toList();
  }

  private static Schema schema(String text) {
    try {
      String reference = JSON.readTree(text).path("$ref").asText();
      if (reference.isEmpty()) {
        return REGISTRY.getSchema(text, InputFormat.JSON);
      }
      return REGISTRY.getSchema(SchemaLocation.of(BASE + "openapi.yaml" + reference));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every example of an answer in the document, with its schema. */
  static Map<String, List<String>> againstAnswerExamples() {
    Map<String, List<String>> against = new LinkedHashMap<>();
    ROOT.at("/components/responses")
        .properties()
        .forEach(
            response ->
                response
                    .getValue()
                    .path("content")
                    .properties()
                    .forEach(
                        media ->
                            media
                                .getValue()
                                .path("examples")
                                .properties()
                                .forEach(
                                    one ->
                                        against.put(
                                            response.getKey() + " " + one.getKey(),
                                            against(
                                                media.getValue().path("schema"),
                                                one.getValue().path("value").toString())))));
    return against;
  }
}
