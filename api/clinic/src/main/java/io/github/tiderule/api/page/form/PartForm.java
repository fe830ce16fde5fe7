package io.github.tiderule.api.page.form;

import io.github.tiderule.format.node.Node;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A form of a part of a season's document. */
public interface PartForm {

  /**
   * The season's document with what was typed; absent where something is wrong, which is then said.
   *
   * @param was the document so far; what the form does not ask stays as it is
   */
  Node.@Nullable Members read(Typed typed, Node.Members was);

  /** A form filled in with a season's document. */
  Typed filled(Node.Members season);

  /** A document with a part of it replaced; without it where the part is empty. */
  static Node.Members with(Node.Members was, String name, Part part) {
    Map<String, Node> fields = new LinkedHashMap<>(was.byKey());
    fields.remove(name);
    fields.putAll(new Part().part(name, part).members().byKey());
    return new Node.Members(fields);
  }
}
