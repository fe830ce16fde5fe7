package io.github.tiderule.cases.difference;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;

/** A case told of a female with an id of her own, for all that looks at several females. */
final class Told {

  private static final int LONGEST_ID = 64;

  private Told() {}

  /** Her id, from the name of the case. */
  static String id(String name) {
    return name.length() <= LONGEST_ID ? name : name.substring(0, LONGEST_ID);
  }

  /**
   * The cycle file on one line.
   *
   * @throws IOException if it is no JSON object
   */
  static String of(String name, String cycle) throws IOException {
    Map<String, Node> her = fields(Tree.of(cycle).at("female"));
    her.put("id", new Node.Text(id(name)));
    Map<String, Node> all = fields(Tree.of(cycle));
    all.put("female", new Node.Members(her));
    return NodeText.of(new Node.Members(all));
  }

  /** The fields of an object, to be changed; none where there is no object. */
  static Map<String, Node> fields(Tree object) {
    return object.node().orElse(null) instanceof Node.Members members
        ? new LinkedHashMap<>(members.byKey())
        : new LinkedHashMap<>();
  }
}
