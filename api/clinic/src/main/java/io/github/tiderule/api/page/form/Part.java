package io.github.tiderule.api.page.form;

import io.github.tiderule.format.node.Node;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** An object of a cycle file in the making. What is empty is left out. */
final class Part {

  private final Map<String, Node> fields = new LinkedHashMap<>();

  Part text(String name, @Nullable String value) {
    if (value != null && !value.isEmpty()) {
      fields.put(name, new Node.Text(value));
    }
    return this;
  }

  Part number(String name, @Nullable String digits) {
    if (digits != null) {
      fields.put(name, new Node.Digits(digits));
    }
    return this;
  }

  Part number(String name, @Nullable Amount amount) {
    return number(name, amount == null ? null : amount.digits());
  }

  Part flag(String name, boolean value) {
    fields.put(name, new Node.Flag(value));
    return this;
  }

  Part texts(String name, List<String> all) {
    if (!all.isEmpty()) {
      fields.put(name, new Node.Entries(all.stream().<Node>map(Node.Text::new).toList()));
    }
    return this;
  }

  Part node(String name, Node node) {
    fields.put(name, node);
    return this;
  }

  Part part(String name, Part part) {
    if (!part.isEmpty()) {
      fields.put(name, part.members());
    }
    return this;
  }

  boolean isEmpty() {
    return fields.isEmpty();
  }

  Node.Members members() {
    return new Node.Members(fields);
  }
}
