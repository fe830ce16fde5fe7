package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One of the two programs compared: a runnable jar, with or without a local protocol. It is asked
 * through its batch command, so that any two versions can be compared that speak one wire format.
 *
 * @param jar the runnable jar
 * @param protocol a clinic's own parameters
 */
record Side(Path jar, @Nullable Path protocol) {

  private static final int SOME_REFUSED = 3;

  /** Reads {@code JAR} or {@code JAR+PROTOCOL}. */
  static Side of(String text) {
    int plus = text.lastIndexOf(".jar+");
    return plus < 0
        ? new Side(Path.of(text), null)
        : new Side(Path.of(text.substring(0, plus + 4)), Path.of(text.substring(plus + 5)));
  }

  /**
   * The answers to some cycles, in their order; a refusal is an answer too.
   *
   * @param lines cycle files, one a line
   * @throws IOException if the program cannot be run, or gives anything but one answer a line
   */
  List<Tree> answers(List<String> lines) throws IOException {
    Path in = Files.createTempFile("cycles", ".jsonl");
    Path out = Files.createTempFile("answers", ".jsonl");
    try {
      Files.write(in, lines, StandardCharsets.UTF_8);
      List<String> command = new ArrayList<>(List.of(java(), "-jar", jar.toString(), "batch"));
      if (protocol != null) {
        command.addAll(List.of("--protocol", protocol.toString()));
      }
      command.add(in.toString());
      Process process =
          new ProcessBuilder(command)
              .redirectOutput(out.toFile())
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      int status = process.waitFor();
      if (status != 0 && status != SOME_REFUSED) {
        throw new IOException(jar + " ended with status " + status);
      }
      List<Tree> answers = new ArrayList<>();
      for (String line : Files.readAllLines(out)) {
        answers.add(Tree.of(line));
      }
      if (answers.size() != lines.size()) {
        throw new IOException(
            jar + " gave " + answers.size() + " answers to " + lines.size() + " cycles");
      }
      return answers;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } finally {
      Files.deleteIfExists(in);
      Files.deleteIfExists(out);
    }
  }

  private static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }
}
