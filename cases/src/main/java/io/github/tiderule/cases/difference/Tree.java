package io.github.tiderule.cases.difference;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** A JSON document to look things up in; what is not there is empty. */
record Tree(Optional<Node> node) {

  /**
   * @throws IOException if the text is no JSON document
   */
  static Tree of(String json) throws IOException {
    Problems problems = new Problems();
    Optional<Node> read = NodeReader.read(json, problems);
    if (read.isEmpty() || !problems.none()) {
      throw new IOException("not a JSON document: " + problems.all());
    }
    return new Tree(read);
  }

  /** The value of a key. */
  Tree at(String key) {
    return new Tree(
        node.flatMap(
            one ->
                one instanceof Node.Members members
                    ? Optional.ofNullable(members.byKey().get(key))
                    : Optional.empty()));
  }

  /** The entries of a list. */
  List<Tree> entries() {
    return node.isPresent() && node.get() instanceof Node.Entries list
        ? list.all().stream().map(one -> new Tree(Optional.of(one))).toList()
        : List.of();
  }

  /** Whether a list is here, with entries or without. */
  boolean isList() {
    return node.isPresent() && node.get() instanceof Node.Entries;
  }

  /** A text; empty for anything else. */
  String text() {
    return node.isPresent() && node.get() instanceof Node.Text text ? text.value() : "";
  }
}
