package io.github.tiderule.api.command.stream;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;

/**
 * The lines of a stream, without their line feeds. Of a line longer than the limit only the limit
 * and one byte more are kept, so that memory stays bounded and the reader can tell.
 */
public final class InputLines {

  private static final int BUFFER_BYTES = 1 << 16;

  private final InputStream in;
  private final int mostBytes;
  private final byte[] buffer = new byte[BUFFER_BYTES];
  private int at;
  private int end;

  /** The lines of a stream, of which each is kept up to so many bytes and one more. */
  public InputLines(InputStream in, int mostBytes) {
    this.in = in;
    this.mostBytes = mostBytes;
  }

  /** The next line; absent at the end of the stream. */
  public byte @Nullable [] next() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    boolean any = false;
    while (true) {
      if (at == end) {
        at = 0;
        end = Math.max(0, in.read(buffer));
        if (end == 0) {
          return any ? line.toByteArray() : null;
        }
      }
      any = true;
      int feed = at;
      while (feed < end && buffer[feed] != '\n') {
        feed++;
      }
      int kept = Math.min(feed - at, mostBytes + 1 - line.size());
      line.write(buffer, at, kept);
      at = feed;
      if (feed < end) {
        at++;
        return line.toByteArray();
      }
    }
  }

  /** Whether more can surely be read without waiting. */
  public boolean ready() {
    try {
      return at < end || in.available() > 0;
    } catch (IOException e) {
      return false;
    }
  }
}
