package io.github.tiderule.format.node;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** One value of a JSON document, with numbers kept as they were written. */
public sealed interface Node {

  /** An object; keys in the order they were written. */
  record Members(Map<String, Node> byKey) implements Node {

    /** The text at a key, if it is one. */
    public @Nullable String text(String key) {
      return byKey.get(key) instanceof Text text ? text.value() : null;
    }

    /** The object at a key, if it is one. */
    public @Nullable Members members(String key) {
      return byKey.get(key) instanceof Members members ? members : null;
    }

    /** The entries of the list at a key; none if it is no list. */
    public List<Node> entries(String key) {
      return byKey.get(key) instanceof Entries entries ? entries.all() : List.of();
    }

    /** The objects in the list at a key; none if it is no list. */
    public List<Members> objects(String key) {
      return entries(key).stream()
          .filter(Members.class::isInstance)
          .map(Members.class::cast)
          .toList();
    }
  }

  /** A list. */
  record Entries(List<Node> all) implements Node {}

  /** A text. */
  record Text(String value) implements Node {}

  /** A number as written; also {@code NaN} and the infinities, which JSON does not have. */
  record Digits(String written) implements Node {}

  /** {@code true} or {@code false}. */
  record Flag(boolean value) implements Node {}

  /** {@code null}. */
  record Nothing() implements Node {}

  /** The JSON type, with its article, for messages. */
  default String typeName() {
    if (this instanceof Members) {
      return "an object";
    }
    if (this instanceof Entries) {
      return "a list";
    }
    if (this instanceof Text) {
      return "a text";
    }
    if (this instanceof Digits) {
      return "a number";
    }
    return this instanceof Flag ? "true or false" : "null";
  }
}
