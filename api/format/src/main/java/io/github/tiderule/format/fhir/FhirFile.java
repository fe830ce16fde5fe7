package io.github.tiderule.format.fhir;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.node.Shown;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The observations of a file: one resource, a bundle of them, or one resource on each line. */
final class FhirFile {

  /** How many observations are read. */
  static final int MOST = 500;

  /** Bundles in which each entry is a resource as it is, and nothing is to be done with it. */
  private static final Set<String> BUNDLES =
      Set.of("collection", "searchset", "document", "message", "batch-response");

  /**
   * One observation, or a line that holds no resource.
   *
   * @param line number of its line, from 1, in a file with one resource on each
   * @param at where it stands in the file, or in its line
   * @param problems why it is none
   */
  record Part(
      @Nullable Integer line,
      Pointer at,
      Node.@Nullable Members observation,
      List<Problem> problems) {}

  private final List<Part> parts = new ArrayList<>();
  private final Map<String, Node.Members> byReference = new HashMap<>();
  private final Problems problems;

  private FhirFile(Problems problems) {
    this.problems = problems;
  }

  /** The file; where it cannot be used at all, problems are noted. */
  static FhirFile read(String text, Pointer where, Problems problems) {
    FhirFile file = new FhirFile(problems);
    Problems whole = new Problems();
    Node node = NodeReader.read(text, whole).orElse(null);
    boolean lines =
        whole.all().stream().anyMatch(one -> one.code() == ProblemCode.TRAILING_CONTENT);
    if (lines) {
      file.addLines(text);
    } else if (node == null || !whole.none()) {
      whole.all().forEach(one -> problems.add(where, one.code(), one.message(), one.hint()));
    } else {
      file.add(node, null, Pointer.ROOT, true);
    }
    if (problems.none() && file.parts.isEmpty()) {
      problems.add(
          where, ProblemCode.EMPTY_FILE, "there is no Observation in it", "Maybe another file?");
    }
    if (file.parts.size() > MOST) {
      problems.add(
          where,
          ProblemCode.TOO_MANY,
          "it has " + file.parts.size() + " observations; " + MOST + " are the most");
    }
    return file;
  }

  List<Part> parts() {
    return parts;
  }

  private void addLines(String text) {
    int line = 0;
    for (String one : text.split("\n", -1)) {
      line++;
      if (one.isBlank()) {
        continue;
      }
      Problems here = new Problems();
      Node node = NodeReader.read(one, here).orElse(null);
      if (node == null || !here.none()) {
        parts.add(new Part(line, Pointer.ROOT, null, here.all()));
      } else {
        add(node, line, Pointer.ROOT, false);
      }
    }
  }

  private void add(Node node, @Nullable Integer line, Pointer at, boolean alone) {
    String type = node instanceof Node.Members members ? members.text("resourceType") : null;
    if (!(node instanceof Node.Members resource) || type == null) {
      refuse(line, at.child("resourceType"), ProblemCode.MISSING_FIELD, "resourceType is missing");
      return;
    }
    String id = resource.text("id");
    if (id != null) {
      byReference.putIfAbsent(type + "/" + id, resource);
    }
    if (type.equals("Observation")) {
      parts.add(new Part(line, at, resource, List.of()));
    } else if (type.equals("Bundle")) {
      addBundle(resource, line, at);
    } else if (alone) {
      refuse(
          line,
          at.child("resourceType"),
          ProblemCode.UNKNOWN_WORD,
          "resourceType is " + Shown.quoted(type) + ", not Observation or Bundle");
    }
  }

  private void addBundle(Node.Members bundle, @Nullable Integer line, Pointer at) {
    String type = bundle.text("type");
    if (type == null || !BUNDLES.contains(type)) {
      refuse(
          line,
          at.child("type"),
          type == null ? ProblemCode.MISSING_FIELD : ProblemCode.UNKNOWN_WORD,
          "type of the Bundle is "
              + (type == null ? "missing" : Shown.quoted(type))
              + "; it can be "
              + String.join(", ", BUNDLES.stream().sorted().toList()));
      return;
    }
    List<Node> entries = bundle.entries("entry");
    for (int i = 0; i < entries.size(); i++) {
      if (entries.get(i) instanceof Node.Members entry && entry.members("resource") != null) {
        Node.Members resource = entry.members("resource");
        String url = entry.text("fullUrl");
        if (url != null && resource != null) {
          byReference.putIfAbsent(url, resource);
        }
        if (resource != null) {
          add(resource, line, at.child("entry").child(i).child("resource"), false);
        }
      }
    }
  }

  private void refuse(@Nullable Integer line, Pointer at, ProblemCode code, String message) {
    if (line == null) {
      problems.add(at, code, message);
    } else {
      parts.add(new Part(line, at, null, List.of(Problem.of(at.text(), code, message))));
    }
  }

  /**
   * The resource a reference means, if it is in the file.
   *
   * @param from the resource the reference stands in
   */
  Node.@Nullable Members resolve(String reference, Node.Members from) {
    if (reference.startsWith("#")) {
      return from.objects("contained").stream()
          .filter(one -> reference.substring(1).equals(one.text("id")))
          .findFirst()
          .orElse(null);
    }
    return byReference.get(reference);
  }

  /** The resource that an object of the type Reference means, if it is in the file. */
  Node.@Nullable Members resolve(Node.@Nullable Members reference, Node.Members from) {
    String text = reference == null ? null : reference.text("reference");
    return text == null ? null : resolve(text, from);
  }
}
