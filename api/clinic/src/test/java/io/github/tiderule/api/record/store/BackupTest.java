package io.github.tiderule.api.record.store;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup is whole or is not there, and a record that must not be used is refused. */
class BackupTest {

  private static final Instant NOW = Instant.parse("2027-01-13T12:00:00Z");

  @TempDir private Path directory = Path.of("");

  private Path path(String name) {
    return directory.resolve(name);
  }

  private Store open(String name) {
    return Store.open(Address.of(path(name).toString()));
  }

  private Path file(String record) {
    return path(record).resolve(Address.FILE);
  }

  private static void fill(Store store, int females) {
    store.change(
        ledger -> {
          Person owner = People.of(ledger).local(NOW);
          for (int i = 0; i < females; i++) {
            String name = "bitch-" + i;
            String said = "{\"id\": \"" + name + "\", \"breed\": \"" + "x".repeat(300) + "\"}";
            ledger.females().add(owner.key(), name, said, NOW);
          }
          return true;
        });
  }

  private static List<String> names(Path directory) throws IOException {
    try (Stream<Path> files = Files.list(directory)) {
      return files.map(file -> String.valueOf(file.getFileName())).sorted().toList();
    }
  }

  private static String permissions(Path file) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
  }

  /** Writes over the middle of a file, as a failing disk does. */
  private static void damage(Path file) throws IOException {
    try (RandomAccessFile open = new RandomAccessFile(file.toFile(), "rw")) {
      for (long at = 4096 * 4; at < open.length(); at += 4096) {
        open.seek(at);
        open.write(new byte[2000]);
      }
    }
  }

  private static void execute(Path database, String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement statement = connection.createStatement()) {
      for (String one : statements) {
        statement.execute(one);
      }
    }
  }

  private Path backup() {
    Path backup = path("backup.db");
    try (Store store = open("source")) {
      fill(store, 200);
      Backup.write(store, backup);
    }
    return backup;
  }

  @Test
  void everyTableIsInABackup() throws SQLException {
    open("one").close();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file("one"));
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT group_concat(name) FROM sqlite_master WHERE type = 'table'"
                    + " AND name NOT LIKE 'flyway%' AND name NOT LIKE 'sqlite%'")) {
      assertThat(
          List.of(row.getString(1).split(",", -1)),
          containsInAnyOrder(Backup.TABLES.toArray(new String[0])));
    }
  }

  @Test
  void aBackupThatFailsLeavesNothing() throws IOException {
    Path target = Files.createDirectory(path("backups"));
    try (Store store = open("source")) {
      fill(store, 500);
      store.read(ledger -> ledger.handle().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
      store.read(ledger -> ledger.handle().execute("PRAGMA shrink_memory"));
      damage(file("source"));
      assertThrows(RuntimeException.class, () -> Backup.write(store, target.resolve("a.db")));
    }
    assertThat(names(target), is(List.of()));
    try (Store store = open("other")) {
      assertThrows(
          IllegalArgumentException.class, () -> Backup.write(store, path("none/such/a.db")));
    }
  }

  @Test
  void whatIsNoBackupIsRefusedAndLeftAsItIs() throws Exception {
    Path backup = backup();
    byte[] whole = Files.readAllBytes(backup);
    Path empty = Files.createFile(path("empty.db"));
    Path cut = Files.write(path("cut.db"), Arrays.copyOf(whole, whole.length / 2));
    Path text = Files.writeString(path("text.db"), "not a record at all, ".repeat(999));
    Path damaged = Files.write(path("damaged.db"), whole);
    damage(damaged);
    Path other = path("other.db");
    execute(other, "CREATE TABLE dog (name TEXT)", "INSERT INTO dog VALUES ('Juniper')");
    Path newer = Files.write(path("newer.db"), whole);
    execute(newer, "UPDATE flyway_schema_history SET version = '99' WHERE version = '1'");
    List<String> before = names(directory);
    try (Store into = open("into")) {
      for (Path bad : List.of(empty, cut, text, damaged, other, newer)) {
        byte[] bytes = Files.readAllBytes(bad);
        IllegalArgumentException refused =
            assertThrows(
                IllegalArgumentException.class, () -> Backup.restore(bad, into), bad.toString());
        assertThat(refused.getMessage(), containsString(String.valueOf(bad.getFileName())));
        assertThat(Files.readAllBytes(bad), is(bytes));
      }
      assertThat(Backup.restore(backup, into), greaterThan(200));
    }
    assertThat(Files.readAllBytes(backup), is(whole));
    assertThat(
        names(directory), is(Stream.concat(before.stream(), Stream.of("into")).sorted().toList()));
  }

  @Test
  void aBackupByAnOlderProgramIsBroughtUpInACopy() throws Exception {
    Path older = path("older.db");
    Flyway.configure(Store.class.getClassLoader())
        .dataSource("jdbc:sqlite:" + older, null, null)
        .locations("classpath:io/github/tiderule/api/record/migration")
        .target("1")
        .load()
        .migrate();
    execute(
        older,
        "INSERT INTO person (id, name, role, created_at) VALUES ('local', 'local', 'KEEPER', 1)");
    byte[] bytes = Files.readAllBytes(older);
    try (Store into = open("into")) {
      assertThat(Backup.restore(older, into), is(1));
    }
    assertThat(Files.readAllBytes(older), is(bytes));
  }

  @Test
  void othersReadNeitherRecordNorBackup() throws IOException {
    Path backup = backup();
    assertThat(permissions(backup), is("rw-------"));
    Files.createDirectory(path("wide"));
    try (Store store = open("wide")) {
      fill(store, 1);
      for (String name : names(path("wide"))) {
        assertThat(name, permissions(path("wide").resolve(name)), is("rw-------"));
      }
    }
    Files.setPosixFilePermissions(file("wide"), PosixFilePermissions.fromString("rw-r--r--"));
    open("wide").close();
    assertThat(permissions(file("wide")), is("rw-------"));
  }

  @Test
  void aRecordOfANewerProgramIsNotOpened() throws Exception {
    open("one").close();
    execute(
        file("one"),
        "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script,"
            + " installed_by, execution_time, success)"
            + " VALUES (99, '99', 'later', 'SQL', 'V99__later.sql', 'x', 1, 1)");
    UnfitRecord refused = assertThrows(UnfitRecord.class, () -> open("one").close());
    assertThat(refused.getMessage(), containsString("newer program"));
  }

  @Test
  void aDamagedRecordIsFoundWhenItIsOpenedAndWhileItIsOpen() throws IOException {
    try (Store store = open("one")) {
      fill(store, 500);
      store.mustBeSound(Duration.ZERO);
      store.read(ledger -> ledger.handle().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
      damage(file("one"));
      assertThrows(Unavailable.class, () -> store.mustBeSound(Duration.ZERO));
    }
    UnfitRecord refused = assertThrows(UnfitRecord.class, () -> open("one").close());
    assertThat(refused.getMessage(), containsString("damaged"));
  }
}
