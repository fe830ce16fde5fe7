package io.github.tiderule.api.command.stream;

import java.io.IOException;
import java.time.Duration;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * One line that tells how far a long run is, written anew about once a second for whoever watches.
 */
public final class Progress {

  private static final long EVERY = Duration.ofSeconds(1).toNanos();

  private final @Nullable Output output;
  private final long size;
  private final LongSupplier nanos;
  private final long start;
  private long shown;
  private long bytes;
  private long answers;

  private Progress(@Nullable Output output, long size, LongSupplier nanos) {
    this.output = output;
    this.size = size;
    this.nanos = nanos;
    start = nanos.getAsLong();
    shown = start;
  }

  /**
   * Progress through a file.
   *
   * @param size bytes there are in all; 0 where nobody knows
   * @param nanos a clock that counts nanoseconds from anywhere
   */
  public static Progress of(Streams streams, long size, LongSupplier nanos) {
    return new Progress(streams.watched() ? new Output(streams.err()) : null, size, nanos);
  }

  /** So many bytes more have been read. */
  public void read(long more) {
    bytes += more;
  }

  /** One more line is answered. */
  public void answered() throws IOException {
    answers++;
    long now = nanos.getAsLong();
    if (output != null && now - shown >= EVERY) {
      shown = now;
      output.clearLine();
      output.print(words(Duration.ofNanos(now - start)));
    }
  }

  /** Takes the line away. */
  public void end() throws IOException {
    if (output != null && shown != start) {
      output.clearLine();
    }
  }

  private String words(Duration taken) {
    double seconds = taken.toNanos() / 1e9;
    String done =
        answers
            + (answers == 1 ? " line, " : " lines, ")
            + Math.round(answers / seconds)
            + " a second";
    if (size == 0 || bytes == 0) {
      return done;
    }
    double share = Math.min(1, (double) bytes / size);
    return done
        + ", "
        + Math.round(100 * share)
        + " %, "
        + left(Math.round(seconds * (1 - share) / share))
        + " left";
  }

  private static String left(long seconds) {
    return seconds < 90
        ? seconds + " s"
        : seconds < 5400
            ? Math.round(seconds / 60.0) + " min"
            : Math.round(seconds / 3600.0) + " h";
  }
}
