package io.github.tiderule.api.record.store;

import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * A whole record in one file, history and users included. The file is itself an embedded record,
 * whatever database it was taken from; so a backup also moves a record from one kind to the other.
 */
public final class Backup {

  private static final int BATCH = 500;

  /** In an order in which no row comes before one it refers to. */
  static final List<String> TABLES =
      List.of(
          "person",
          "session",
          "api_token",
          "audit",
          "female",
          "calendar_address",
          "cycle",
          "season_link",
          "revision",
          "entry",
          "advice",
          "review",
          "kept_answer");

  private Backup() {}

  /**
   * Writes a record as it is at one moment. It can be in use meanwhile. The file has its name only
   * once it is whole, looked through and on the disk; if that does not come to pass, nothing stays.
   *
   * @throws IllegalArgumentException if the file is there already, or its directory is not
   * @throws UncheckedIOException if it cannot be written
   * @throws Unavailable if the record cannot be read, or the disk is full
   */
  public static void write(Store store, Path file) {
    if (Files.exists(file)) {
      throw new IllegalArgumentException(file + " is there already; a backup overwrites nothing");
    }
    Path begun = OwnersFiles.beginBeside(file);
    try {
      fill(store, begun);
      BackupFile.open(begun).close();
      OwnersFiles.finish(begun, file);
    } finally {
      OwnersFiles.remove(begun);
    }
  }

  private static void fill(Store store, Path begun) {
    if (store.isEmbedded()) {
      store.read(
          ledger -> ledger.handle().execute("VACUUM INTO ?", begun.toAbsolutePath().toString()));
    } else {
      try (Store copy = Store.open(Address.ofFile(begun))) {
        store.readAtOneMoment(
            from ->
                copy.change(
                    to -> copy(from.handle().getConnection(), to.handle().getConnection())));
        copy.read(ledger -> ledger.handle().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
      }
    }
  }

  /**
   * Fills a record from a backup, wholly or not at all.
   *
   * @return how many rows it holds
   * @throws IllegalArgumentException if the file is no whole backup, or the record is not empty
   */
  public static int restore(Path file, Store store) {
    try (BackupFile backup = BackupFile.open(file)) {
      return restore(backup, store);
    }
  }

  /**
   * Fills a record from a backup that was opened, wholly or not at all.
   *
   * @return how many rows it holds
   * @throws IllegalArgumentException if the record is not empty
   */
  public static int restore(BackupFile backup, Store store) {
    return store.change(
        to -> {
          if (!isEmpty(to.handle())) {
            throw new IllegalArgumentException(
                "the record is not empty; restore into a new one, and nothing gets lost");
          }
          return copy(backup.connection(), to.handle().getConnection());
        });
  }

  private static boolean isEmpty(Handle handle) {
    return handle.createQuery("SELECT count(*) FROM person").mapTo(Long.class).one() == 0;
  }

  private static int copy(Connection from, Connection to) {
    try {
      int rows = 0;
      for (String table : TABLES) {
        rows += copy(table, from, to);
      }
      return rows;
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static int copy(String table, Connection from, Connection to) throws SQLException {
    int rows = 0;
    try (Statement select = from.createStatement();
        ResultSet read = select.executeQuery("SELECT * FROM " + table)) {
      int columns = read.getMetaData().getColumnCount();
      StringBuilder names = new StringBuilder();
      for (int i = 1; i <= columns; i++) {
        names.append(i == 1 ? "" : ", ").append(read.getMetaData().getColumnName(i));
      }
      String places = String.join(", ", Collections.nCopies(columns, "?"));
      String insert = "INSERT INTO " + table + " (" + names + ") VALUES (" + places + ")";
      try (PreparedStatement write = to.prepareStatement(insert)) {
        while (read.next()) {
          for (int i = 1; i <= columns; i++) {
            write.setObject(i, read.getObject(i));
          }
          write.addBatch();
          rows++;
          if (rows % BATCH == 0) {
            write.executeBatch();
          }
        }
        write.executeBatch();
      }
    }
    return rows;
  }
}
