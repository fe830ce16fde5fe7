package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.node.Utf8;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.io.InputStream;
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
        Utf8.text(utf8, MOST_BYTES, problems)
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
}
