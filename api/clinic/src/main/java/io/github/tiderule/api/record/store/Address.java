package io.github.tiderule.api.record.store;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where a record is kept.
 *
 * @param jdbc the address for the database driver
 * @param file the one file of an embedded record; absent for a database server
 */
public record Address(String jdbc, @Nullable Path file) {

  /** The file of an embedded record, in its directory. */
  public static final String FILE = "tiderule.db";

  private static final String SERVER = "jdbc:postgresql:";

  /**
   * An address as it is written on a command line.
   *
   * @param text a directory, or a JDBC address of a PostgreSQL database
   * @throws IllegalArgumentException for a JDBC address of any other database
   */
  public static Address of(String text) {
    if (text.startsWith(SERVER)) {
      return new Address(text, null);
    }
    if (text.startsWith("jdbc:")) {
      throw new IllegalArgumentException(
          "no record can be kept at "
              + text
              + "; write a directory, or an address that begins with "
              + SERVER);
    }
    return ofFile(Path.of(text).resolve(FILE));
  }

  /** The record in a file of its own. */
  public static Address ofFile(Path file) {
    return new Address("jdbc:sqlite:" + file.toAbsolutePath(), file.toAbsolutePath());
  }

  /** Where it is, for messages, without a password that may stand in it. */
  public String words() {
    return file == null ? jdbc.replaceFirst("\\?.*$", "") : file.toString();
  }
}
