package io.github.tiderule.api.record;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
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

  private static String pragma(Store store, String name) {
    return store.read(
        ledger -> ledger.handle().createQuery("PRAGMA " + name).mapTo(String.class).one());
  }

  @Test
  void noOtherDatabaseIsTaken() {
    assertThrows(IllegalArgumentException.class, () -> Address.of("jdbc:h2:mem:x"));
  }
}
