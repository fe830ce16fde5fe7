package io.github.tiderule.cases.difference;

import io.github.tiderule.cases.difference.program.Printed;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeText;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is said to a cycle file in which one thing is spoilt: each value in turn is a word nobody
 * knows, a number nobody means or missing, and each object has a field too many.
 */
record RefusalAnswers(Asked asked) {

  private static final List<Node> STRANGE =
      List.of(
          new Node.Text("no such word"),
          new Node.Digits("-7.5"),
          new Node.Digits("987654321"),
          new Node.Nothing());

  /** A document with one thing spoilt, and which. */
  private record Spoilt(String what, Node document) {}

  /**
   * Writes what is said to all of them into one file.
   *
   * @param name what the case is called
   * @throws IOException if it cannot be written
   * @throws ReflectiveOperationException if the program cannot be run
   */
  void write(String name, String cycle) throws IOException, ReflectiveOperationException {
    StringBuilder text = new StringBuilder();
    for (Spoilt one : spoilt("", Tree.of(cycle).node().orElseThrow())) {
      Printed printed =
          asked
              .program()
              .runWithoutEngine(NodeText.of(one.document()), "advise", "--json", Asked.INPUT);
      text.append("## ").append(one.what()).append('\n');
      // a good one goes on to ask for the engine, and here finds none
      text.append(printed.status() == 1 ? "taken\n" : printed.text());
    }
    asked.folder().write("refusal/" + name + ".txt", text.toString());
  }

  private static List<Spoilt> spoilt(String path, Node node) {
    List<Spoilt> all = new ArrayList<>();
    if (node instanceof Node.Members members) {
      Map<String, Node> more = new LinkedHashMap<>(members.byKey());
      more.put("strange", new Node.Flag(true));
      all.add(new Spoilt(path + "/strange is there", new Node.Members(more)));
      members
          .byKey()
          .forEach(
              (key, value) -> {
                all.add(new Spoilt(path + "/" + key + " is missing", without(members, key)));
                spoilt(path + "/" + key, value)
                    .forEach(
                        one -> all.add(new Spoilt(one.what(), with(members, key, one.document()))));
              });
    } else if (node instanceof Node.Entries list) {
      for (int i = 0; i < list.all().size(); i++) {
        for (Spoilt one : spoilt(path + "/" + i, list.all().get(i))) {
          List<Node> entries = new ArrayList<>(list.all());
          entries.set(i, one.document());
          all.add(new Spoilt(one.what(), new Node.Entries(entries)));
        }
      }
    }
    STRANGE.forEach(one -> all.add(new Spoilt(path + " is " + NodeText.of(one), one)));
    return all;
  }

  private static Node without(Node.Members members, String key) {
    Map<String, Node> fewer = new LinkedHashMap<>(members.byKey());
    fewer.remove(key);
    return new Node.Members(fewer);
  }

  private static Node with(Node.Members members, String key, Node value) {
    Map<String, Node> other = new LinkedHashMap<>(members.byKey());
    other.put(key, value);
    return new Node.Members(other);
  }
}
