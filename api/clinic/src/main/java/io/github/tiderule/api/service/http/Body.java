package io.github.tiderule.api.service.http;

import io.github.tiderule.format.node.Field;
import io.github.tiderule.format.node.Fields;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** The JSON object a request carries. */
public final class Body {

  private final byte[] bytes;
  private final Node.Members members;
  private final Problems problems;
  private final Fields fields;

  private Body(byte[] bytes, Node.Members members, Problems problems, Fields fields) {
    this.bytes = bytes;
    this.members = members;
    this.problems = problems;
    this.fields = fields;
  }

  /**
   * Reads it.
   *
   * @throws Refusal unless it is a JSON object
   */
  public static Body of(byte[] bytes) {
    Problems problems = new Problems();
    Node node = NodeReader.read(text(bytes, problems), problems).orElse(null);
    Fields fields = node == null ? null : Fields.of(node, problems);
    if (fields == null || !problems.none() || !(node instanceof Node.Members members)) {
      throw Refusal.document(problems.all());
    }
    return new Body(bytes, members, problems, fields);
  }

  private static String text(byte[] bytes, Problems problems) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      problems.add(Pointer.ROOT, ProblemCode.NOT_UTF8, "its bytes are not UTF-8");
      throw Refusal.document(problems.all());
    }
  }

  /** The object as it was sent. */
  public byte[] bytes() {
    return bytes;
  }

  /** The object as it was read. */
  public Node.Members members() {
    return members;
  }

  /** A field that must be there; where it is not, the end of the reading says so. */
  public Field required(String name) {
    return fields.required(name);
  }

  /** A field that may be there. */
  public Field optional(String name) {
    return fields.optional(name);
  }

  /** A value of the object that is read by somebody else. */
  public @Nullable Node node(String name) {
    return members.byKey().get(name);
  }

  /**
   * Ends the reading.
   *
   * @throws Refusal with every problem met, and every field not asked for
   */
  public void end() {
    fields.refuseOthers();
    endWithOthers();
  }

  /**
   * Ends the reading when somebody else reads the rest.
   *
   * @throws Refusal with every problem met
   */
  public void endWithOthers() {
    if (!problems.none()) {
      throw Refusal.document(problems.all());
    }
  }

  /** The value that was read, which is there when no problem was met. */
  public static <T> T there(@Nullable T value) {
    if (value == null) {
      throw new IllegalStateException("a field is missing without a problem");
    }
    return value;
  }
}
