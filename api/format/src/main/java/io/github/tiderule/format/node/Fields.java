package io.github.tiderule.format.node;

import io.github.tiderule.format.problem.NearMiss;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** The fields of one object. What nobody asked for by {@link #refuseOthers} is a problem. */
public final class Fields {

  private final Node.Members members;
  private final Pointer at;
  private final Problems problems;
  private final Set<String> asked = new LinkedHashSet<>();

  Fields(Node.Members members, Pointer at, Problems problems) {
    this.members = members;
    this.at = at;
    this.problems = problems;
  }

  /** The fields of a whole document; absent, with a problem noted, unless it is an object. */
  public static @Nullable Fields of(Node document, Problems problems) {
    return new Field("the document", Pointer.ROOT, document, problems).members();
  }

  /**
   * The fields of an object within a document.
   *
   * @param at where it stands
   */
  public static Fields of(Node.Members members, Pointer at, Problems problems) {
    return new Fields(members, at, problems);
  }

  /** Where the object stands. */
  public Pointer at() {
    return at;
  }

  /** Notes a problem with the object as a whole. */
  public void refuse(ProblemCode code, String message, String hint) {
    problems.add(at, code, message, hint);
  }

  /** A field that must be there; its absence is noted. */
  public Field required(String name) {
    asked.add(name);
    Node node = members.byKey().get(name);
    Pointer place = at.child(name);
    if (node == null || node instanceof Node.Nothing) {
      problems.add(
          place,
          ProblemCode.MISSING_FIELD,
          node == null ? name + " is missing" : name + " is null, and must have a value");
      return new Field(name, place, null, problems);
    }
    return new Field(name, place, node, problems);
  }

  /** A field that may be left out, but not be null. */
  public Field optional(String name) {
    asked.add(name);
    Node node = members.byKey().get(name);
    Pointer place = at.child(name);
    if (node instanceof Node.Nothing) {
      problems.add(
          place,
          ProblemCode.WRONG_TYPE,
          name + " is null",
          "Maybe leave the field out? That is how a file says that something is not known.");
      return new Field(name, place, null, problems);
    }
    return new Field(name, place, node, problems);
  }

  /** Whether a field stands in the object, even as null. */
  public boolean has(String name) {
    return members.byKey().containsKey(name);
  }

  /** Notes every field that was not asked for. */
  public void refuseOthers() {
    refuseOthers(name -> Optional.empty());
  }

  /**
   * Notes every field that was not asked for, but for some.
   *
   * @param spared fields that cannot be judged
   */
  public void refuseOthersExcept(Predicate<String> spared) {
    members.byKey().keySet().stream().filter(spared).forEach(asked::add);
    refuseOthers();
  }

  /**
   * Notes every field that was not asked for.
   *
   * @param elsewhere what to hint at for a name that belongs to another object
   */
  public void refuseOthers(Function<String, Optional<String>> elsewhere) {
    for (String name : members.byKey().keySet()) {
      if (!asked.contains(name)) {
        String hint =
            elsewhere
                .apply(name)
                .or(() -> NearMiss.of(name, asked).map(near -> "Maybe \"" + near + "\"?"))
                .orElseGet(() -> "Fields known here: " + String.join(", ", asked) + ".");
        problems.add(
            at.child(name),
            ProblemCode.UNKNOWN_FIELD,
            "there is no field " + Shown.quoted(name) + " here",
            hint);
      }
    }
  }
}
