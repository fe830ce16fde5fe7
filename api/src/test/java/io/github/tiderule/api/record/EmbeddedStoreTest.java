package io.github.tiderule.api.record;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The record in one file. */
class EmbeddedStoreTest extends StoreTest {

  private int records;

  @Override
  Address empty() {
    return Address.of(directory.resolve("record" + records++).toString());
  }

  @Test
  void itIsOneFileWithAWriteAheadLogFlushedAtEveryChange() throws Exception {
    Address address = empty();
    try (Store store = Store.open(address)) {
      assertThat(pragma(store, "journal_mode"), is("wal"));
      assertThat(pragma(store, "synchronous"), is("2"));
      assertThat(pragma(store, "foreign_keys"), is("1"));
    }
    Path file = Path.of(address.words());
    assertThat(Files.isRegularFile(file), is(true));
    assertThat(
        PosixFilePermissions.toString(Files.getPosixFilePermissions(file.resolveSibling("."))),
        is("rwx------"));
  }

  @Test
  void theNewestMigrationIsTheOneThatIsLookedFor() throws Exception {
    Path migrations =
        Path.of(
            Objects.requireNonNull(
                    Store.class.getResource("/io/github/tiderule/api/record/migration"))
                .toURI());
    try (Stream<Path> files = Files.list(migrations)) {
      int newest =
          files
              .map(file -> String.valueOf(file.getFileName()))
              .mapToInt(name -> Integer.parseInt(name.replaceFirst("^V(\\d+)__.*$", "$1")))
              .max()
              .orElseThrow();
      assertThat(Store.SCHEMA, is(Integer.toString(newest)));
    }
  }

  private static String pragma(Store store, String name) {
    return store.read(
        ledger -> ledger.handle().createQuery("PRAGMA " + name).mapTo(String.class).one());
  }

  @Test
  void noOtherDatabaseIsTaken() {
    assertThrows(IllegalArgumentException.class, () -> Address.of("jdbc:h2:mem:x"));
  }
}
