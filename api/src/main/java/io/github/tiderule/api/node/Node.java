package io.github.tiderule.api.node;

import java.util.List;
import java.util.Map;

/** One value of a JSON document, with numbers kept as they were written. */
public sealed interface Node {

  /** An object; keys in the order they were written. */
  record Members(Map<String, Node> byKey) implements Node {}

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
