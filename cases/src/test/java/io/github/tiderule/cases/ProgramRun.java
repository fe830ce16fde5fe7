package io.github.tiderule.cases;

import io.github.tiderule.api.command.Program;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.Streams;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** One run of the program with the real engine. */
public record ProgramRun(int status, String out, String err) {

  private static final Engine ENGINE = Engine.real().get();

  /** Runs a command with some standard input. */
  public static ProgramRun of(String input, String... arguments) {
    return of(input.getBytes(StandardCharsets.UTF_8), arguments);
  }

  /** Runs a command with some bytes as standard input. */
  public static ProgramRun of(byte[] input, String... arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Streams streams = new Streams(new ByteArrayInputStream(input), out, err);
    int status = new Program(streams, () -> ENGINE).run(arguments);
    return new ProgramRun(
        status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
