package io.github.tiderule.api.command.stream;

import io.github.tiderule.format.node.Characters;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * A stream that texts are written to, as UTF-8. Unlike a print stream it hides no failure, and it
 * lets no character through that a terminal would act on.
 */
public record Output(OutputStream stream) {

  private static final String CLEAR_LINE = "\r\u001b[K";

  /** Writes a text, at once. */
  public void print(String text) throws IOException {
    stream.write(Characters.visible(text).getBytes(StandardCharsets.UTF_8));
    stream.flush();
  }

  /** Takes back what stands on the line of a terminal. */
  void clearLine() throws IOException {
    stream.write(CLEAR_LINE.getBytes(StandardCharsets.UTF_8));
    stream.flush();
  }

  /** Whether the reader of a pipe has gone, which is not an error: it had what it wanted. */
  public static boolean readerHasGone(IOException failure) {
    String message = failure.getMessage();
    return message != null && message.toLowerCase(Locale.ROOT).contains("pipe");
  }
}
