package io.github.tiderule.api.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** A stream that texts are written to, as UTF-8. Unlike a print stream it hides no failure. */
record Output(OutputStream stream) {

  void print(String text) throws IOException {
    stream.write(text.getBytes(StandardCharsets.UTF_8));
    stream.flush();
  }

  /** Whether the reader of a pipe has gone, which is not an error: it had what it wanted. */
  static boolean readerHasGone(IOException failure) {
    String message = failure.getMessage();
    return message != null && message.toLowerCase(Locale.ROOT).contains("pipe");
  }
}
