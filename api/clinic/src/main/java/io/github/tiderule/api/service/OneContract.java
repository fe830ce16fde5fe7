package io.github.tiderule.api.service;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * The OpenAPI document as one JSON file that refers to no other: every schema it takes from beside
 * it becomes a component, named by its file and its own name, as {@code AdvicePlan}.
 */
final class OneContract {

  private static final String REFERENCE = "$ref";
  private static final String DEFINITIONS = "$defs";
  private static final String OWN = "#/";
  private static final String FOLDER = "schemas/";
  private static final String COMPONENTS = "#/components/schemas/";

  private final Map<String, Object> contract;
  private final Map<String, Object> components;
  private final Map<String, Map<String, Object>> files = new LinkedHashMap<>();

  private OneContract(Map<String, Object> contract) {
    this.contract = contract;
    this.components = members(members(contract.get("components")).get("schemas"));
  }

  /**
   * The document.
   *
   * @param yaml the OpenAPI document as it is written
   * @param schemas names of the files it takes schemas from
   * @param content from such a name to what stands in it
   */
  static String text(String yaml, List<String> schemas, UnaryOperator<String> content) {
    OneContract one = new OneContract(members(load(yaml)));
    schemas.forEach(name -> one.files.put(name, members(load(content.apply(name)))));
    return NodeText.of(node(one.whole()));
  }

  /** JSON is YAML too. */
  private static @Nullable Object load(String text) {
    return new Load(LoadSettings.builder().build()).loadFromString(text);
  }

  @SuppressWarnings("unchecked") // the keys of both documents are texts
  private static Map<String, Object> members(@Nullable Object value) {
    return value instanceof Map<?, ?> map ? (Map<String, Object>) map : Map.of();
  }

  private Map<String, Object> whole() {
    Map<String, Object> all = new LinkedHashMap<>();
    components.forEach(
        (name, schema) ->
            all.put(name, rootOf(schema).map(this::document).orElseGet(() -> own(schema))));
    files.forEach(
        (file, document) ->
            members(document.get(DEFINITIONS))
                .forEach((name, schema) -> all.put(name(file, name), within(file, schema))));
    Map<String, Object> parts = new LinkedHashMap<>(members(own(contract.get("components"))));
    parts.put("schemas", all);
    Map<String, Object> whole = new LinkedHashMap<>(members(own(contract)));
    whole.put("components", parts);
    return whole;
  }

  /** The file that a component is the whole of. */
  private Optional<String> rootOf(@Nullable Object schema) {
    return members(schema).get(REFERENCE) instanceof String reference
            && reference.startsWith(FOLDER)
            && reference.indexOf('#') < 0
        ? Optional.of(reference.substring(FOLDER.length()))
        : Optional.empty();
  }

  private Object document(String file) {
    Map<String, Object> schema = new LinkedHashMap<>(members(files.get(file)));
    List.of(DEFINITIONS, "$id", "$schema").forEach(schema::remove);
    return within(file, schema);
  }

  /** The name of a definition of a file: {@code AdvicePlan} of {@code advice-1.schema.json}. */
  private static String name(String file, String definition) {
    return capital(file.substring(0, file.indexOf('-'))) + capital(definition);
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }

  /** A part of the OpenAPI document, with what it takes from files. */
  private Object own(@Nullable Object part) {
    return rewritten(
        part, reference -> reference.startsWith(FOLDER) ? taken(reference) : named(reference));
  }

  /** A part of a schema file, with its own definitions as components. */
  private Object within(String file, @Nullable Object part) {
    return rewritten(
        part,
        reference -> {
          String definition = OWN + DEFINITIONS + "/";
          if (!reference.startsWith(definition)) {
            throw new IllegalStateException(file + " refers to " + reference);
          }
          return named(COMPONENTS + name(file, reference.substring(definition.length())));
        });
  }

  private static Map<String, Object> named(String reference) {
    return Map.of(REFERENCE, reference);
  }

  /** What a reference of the OpenAPI document to a file means. */
  private Object taken(String reference) {
    int hash = reference.indexOf('#');
    String file = reference.substring(FOLDER.length(), hash < 0 ? reference.length() : hash);
    if (hash < 0) {
      return named(
          COMPONENTS
              + components.entrySet().stream()
                  .filter(one -> rootOf(one.getValue()).filter(file::equals).isPresent())
                  .map(Map.Entry::getKey)
                  .findFirst()
                  .orElseThrow());
    }
    String[] steps = reference.substring(hash + OWN.length()).split("/", -1);
    if (steps.length == 2 && steps[0].equals(DEFINITIONS)) {
      return named(COMPONENTS + name(file, steps[1]));
    }
    Object at = files.get(file);
    for (String step : steps) {
      at = members(at).get(step);
    }
    return within(file, at);
  }

  private interface Meaning {
    Object of(String reference);
  }

  private static Object rewritten(@Nullable Object part, Meaning meaning) {
    if (part instanceof Map<?, ?> map) {
      if (map.get(REFERENCE) instanceof String reference) {
        return beside(map, meaning.of(reference), meaning);
      }
      Map<String, Object> members = new LinkedHashMap<>();
      map.forEach((key, value) -> members.put(key.toString(), rewritten(value, meaning)));
      return members;
    }
    if (part instanceof List<?> list) {
      List<Object> entries = new ArrayList<>();
      list.forEach(entry -> entries.add(rewritten(entry, meaning)));
      return entries;
    }
    return part == null ? new Node.Nothing() : part;
  }

  /** What a reference means, with what is said beside it. */
  private static Object beside(Map<?, ?> map, Object meant, Meaning meaning) {
    Map<String, Object> all = new LinkedHashMap<>(members(meant));
    map.forEach(
        (key, value) -> {
          if (!key.equals(REFERENCE)) {
            all.put(key.toString(), rewritten(value, meaning));
          }
        });
    return all;
  }

  private static Node node(Object value) {
    if (value instanceof Node node) {
      return node;
    }
    if (value instanceof Map<?, ?> map) {
      Map<String, Node> members = new LinkedHashMap<>();
      map.forEach((key, one) -> members.put(key.toString(), node(one)));
      return new Node.Members(members);
    }
    if (value instanceof List<?> list) {
      return new Node.Entries(list.stream().map(OneContract::node).toList());
    }
    if (value instanceof Boolean flag) {
      return new Node.Flag(flag);
    }
    return value instanceof Number number
        ? new Node.Digits(number.toString())
        : new Node.Text(value.toString());
  }
}
