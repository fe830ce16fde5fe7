package io.github.tiderule.api.cycle;

import io.github.tiderule.api.node.Node;
import io.github.tiderule.api.node.NodeReader;
import io.github.tiderule.api.problem.Pointer;
import io.github.tiderule.api.problem.ProblemCode;
import io.github.tiderule.api.problem.Problems;
import io.github.tiderule.engine.CycleRecord;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reads cycle files, schema {@code tiderule/cycle/1}: UTF-8 with or without a byte order mark, at
 * most {@value #MOST_BYTES} bytes.
 */
public final class CycleFile {

  /** How long a cycle file may be, in bytes. */
  public static final int MOST_BYTES = 1 << 20;

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private CycleFile() {}

  /**
   * Reads a cycle file to its end, or to just past the greatest length.
   *
   * @param asOf the moment to advise for instead of the file's own, if given
   * @throws IOException if the stream fails
   */
  public static Reading read(InputStream utf8, @Nullable Instant asOf) throws IOException {
    return read(utf8.readNBytes(MOST_BYTES + 1), asOf);
  }

  /** Reads a cycle file. */
  public static Reading read(byte[] utf8) {
    return read(utf8, null);
  }

  /**
   * Reads a cycle file.
   *
   * @param asOf the moment to advise for instead of the file's own, if given
   */
  public static Reading read(byte[] utf8, @Nullable Instant asOf) {
    Problems problems = new Problems();
    CycleRecord cycle =
        text(utf8, problems)
            .flatMap(text -> NodeReader.read(text, problems))
            .flatMap(node -> cycle(node, asOf, problems))
            .orElse(null);
    if (cycle != null && problems.none()) {
      return new Reading.Read(cycle);
    }
    if (problems.none()) {
      throw new IllegalStateException("a cycle file was refused without a reason");
    }
    return new Reading.Refused(problems.all());
  }

  private static Optional<CycleRecord> cycle(Node node, @Nullable Instant asOf, Problems problems) {
    return Optional.ofNullable(CycleReader.read(node, asOf, problems));
  }

  private static Optional<String> text(byte[] utf8, Problems problems) {
    if (utf8.length > MOST_BYTES) {
      problems.add(
          Pointer.ROOT, ProblemCode.TOO_LARGE, "it is longer than " + MOST_BYTES + " bytes");
      return Optional.empty();
    }
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer bytes = ByteBuffer.wrap(utf8);
    CharBuffer characters = CharBuffer.allocate(utf8.length);
    CoderResult result = decoder.decode(bytes, characters, true);
    String text = characters.flip().toString();
    if (result.isError()) {
      long line = text.chars().filter(character -> character == '\n').count() + 1;
      problems.add(
          Pointer.ROOT,
          ProblemCode.NOT_UTF8,
          "its bytes are not UTF-8: line " + line + ", byte " + (bytes.position() + 1));
      return Optional.empty();
    }
    boolean marked = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK;
    return Optional.of(marked ? text.substring(1) : text);
  }
}
