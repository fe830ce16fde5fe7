package io.github.tiderule.api.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The version of the program. */
final class Version {

  private static final String RESOURCE = "/io/github/tiderule/api/version.txt";

  private Version() {}

  static String text() {
    try (InputStream in = Version.class.getResourceAsStream(RESOURCE)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks " + RESOURCE);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
