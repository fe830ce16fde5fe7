package io.github.tiderule.api.record.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A backup opened for reading: whole, and of a record this program knows. Nothing is written to the
 * file, nor beside it, so that it may lie on a medium that cannot be written.
 */
public final class BackupFile implements AutoCloseable {

  private static final byte[] BEGINNING = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  private final Connection connection;
  private final @Nullable Path broughtUp;

  private BackupFile(Connection connection, @Nullable Path broughtUp) {
    this.connection = connection;
    this.broughtUp = broughtUp;
  }

  /**
   * Opens one.
   *
   * @throws IllegalArgumentException if it is none, not whole, or of a newer program
   */
  public static BackupFile open(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new IllegalArgumentException("there is no file " + file);
    }
    if (!beginsAsOne(file)) {
      throw new IllegalArgumentException(file + " is no backup of a record");
    }
    Connection connection = connect(file);
    try {
      Schema schema = checked(file, connection);
      if (schema.isCurrent()) {
        return new BackupFile(connection, null);
      }
    } catch (RuntimeException e) {
      close(connection);
      throw e;
    }
    close(connection);
    return older(file);
  }

  private static boolean beginsAsOne(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(in.readNBytes(BEGINNING.length), BEGINNING);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Connection connect(Path file) {
    // what lies in a log beside it belongs to it, and is read where there is one
    boolean alone = isEmpty(OwnersFiles.beside(file, "-wal"));
    String address =
        "jdbc:sqlite:file:"
            + file.toAbsolutePath().toUri().getRawPath()
            + "?mode=ro"
            + (alone ? "&immutable=1" : "");
    try {
      return DriverManager.getConnection(address);
    } catch (SQLException e) {
      throw damaged(file, e.getMessage());
    }
  }

  private static boolean isEmpty(Path file) {
    try {
      return !Files.exists(file) || Files.size(file) == 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static IllegalArgumentException damaged(Path file, @Nullable String words) {
    return new IllegalArgumentException(file + " is damaged: " + words);
  }

  private static Schema checked(Path file, Connection connection) {
    try {
      Soundness.damage(connection, "integrity_check")
          .ifPresent(
              damage -> {
                throw damaged(file, damage);
              });
    } catch (SQLException e) {
      throw new IllegalArgumentException(file + " cannot be read: " + e.getMessage(), e);
    }
    Schema schema =
        Schema.of(connection)
            .orElseThrow(
                () -> new IllegalArgumentException(file + " has none of the tables of a record"));
    try {
      schema.mustBeKnown();
    } catch (UnfitRecord e) {
      throw new IllegalArgumentException(file + " " + e.getMessage(), e);
    }
    return schema;
  }

  /** One by an older program is brought up in a copy. */
  private static BackupFile older(Path file) {
    try {
      Path copy = Files.createTempDirectory("tiderule-restore").resolve(Address.FILE);
      try {
        Files.copy(file, copy);
        Path log = OwnersFiles.beside(file, "-wal");
        if (Files.exists(log)) {
          Files.copy(log, OwnersFiles.beside(copy, "-wal"));
        }
        Store.open(Address.ofFile(copy)).close();
        return new BackupFile(connect(copy), copy);
      } catch (RuntimeException | IOException e) {
        removeCopy(copy);
        throw e;
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void removeCopy(Path copy) {
    OwnersFiles.remove(copy);
    try {
      Files.deleteIfExists(OwnersFiles.directory(copy));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Connection connection() {
    return connection;
  }

  private static void close(Connection connection) {
    try {
      connection.close();
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    close(connection);
    if (broughtUp != null) {
      removeCopy(broughtUp);
    }
  }
}
