package io.github.tiderule.format.node;

import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Reads bytes as UTF-8, strictly, with or without a byte order mark. */
public final class Utf8 {

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private Utf8() {}

  /**
   * The text of a file; empty, with a problem noted, when there is none.
   *
   * @param mostBytes how long it may be
   */
  public static Optional<String> text(byte[] utf8, int mostBytes, Problems problems) {
    if (utf8.length > mostBytes) {
      problems.add(
          Pointer.ROOT, ProblemCode.TOO_LARGE, "it is longer than " + mostBytes + " bytes");
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
