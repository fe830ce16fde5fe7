package io.github.tiderule.api.command.stream;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where a command reads from and writes to. Everything written is UTF-8, whatever the locale.
 *
 * @param watched whether a person sees what is written to {@code err} as it comes
 */
public record Streams(InputStream in, OutputStream out, OutputStream err, boolean watched) {

  private static final Path ERROR_OUTPUT = Path.of("/proc/self/fd/2");

  /** Streams that nobody watches. */
  public Streams(InputStream in, OutputStream out, OutputStream err) {
    this(in, out, err, false);
  }

  /** The streams of the process. */
  public static Streams ofProcess() {
    return new Streams(
        new FileInputStream(FileDescriptor.in),
        new FileOutputStream(FileDescriptor.out),
        new FileOutputStream(FileDescriptor.err),
        isTerminal(ERROR_OUTPUT));
  }

  /** Whether it leads to a terminal; Java tells that only of input and output together. */
  private static boolean isTerminal(Path descriptor) {
    try {
      String to = Files.readSymbolicLink(descriptor).toString();
      return to.startsWith("/dev/pts/") || to.startsWith("/dev/tty");
    } catch (IOException | UnsupportedOperationException e) {
      return false;
    }
  }
}
