package io.github.tiderule.benchmark;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Commands as whole processes: how long they take, and how much memory at most. */
final class Commands {

  private static final Pattern MOST_MEMORY = Pattern.compile("VmHWM:\\s+(\\d+) kB");

  /**
   * One run.
   *
   * @param seconds from start to end
   * @param megabytes resident at most; NaN where the system does not tell
   */
  record Run(double seconds, double megabytes) {}

  private Commands() {}

  /**
   * Runs a command.
   *
   * @throws IllegalStateException if it fails
   */
  static Run run(List<String> command, Path in, Path out) throws IOException {
    long start = System.nanoTime();
    Process process =
        new ProcessBuilder(command)
            .redirectInput(in.toFile())
            .redirectOutput(out.toFile())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    Path status = Path.of("/proc", Long.toString(process.pid()), "status");
    double memory = Double.NaN;
    try {
      while (!process.waitFor(2, TimeUnit.MILLISECONDS)) {
        double now = memory(status);
        memory = Double.isNaN(now) ? memory : now;
      }
    } catch (InterruptedException e) {
      process.destroy();
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
    double seconds = (System.nanoTime() - start) / 1e9;
    if (process.exitValue() != 0) {
      throw new IllegalStateException(command + " ended with " + process.exitValue());
    }
    return new Run(seconds, memory);
  }

  private static double memory(Path status) {
    try {
      Matcher matcher = MOST_MEMORY.matcher(Files.readString(status));
      return matcher.find() ? Double.parseDouble(matcher.group(1)) / 1024 : Double.NaN;
    } catch (IOException | UncheckedIOException e) {
      // it has ended, or this is another system
      return Double.NaN;
    }
  }

  /** The median of some runs after a first one that does not count. */
  static Run median(int runs, List<String> command, Path in) throws IOException {
    Path nowhere = new File("/dev/null").toPath();
    run(command, in, nowhere);
    List<Double> seconds = new ArrayList<>();
    List<Double> memory = new ArrayList<>();
    for (int i = 0; i < runs; i++) {
      Run run = run(command, in, nowhere);
      seconds.add(run.seconds());
      memory.add(run.megabytes());
    }
    return new Run(Medians.of(seconds), Medians.of(memory));
  }
}
