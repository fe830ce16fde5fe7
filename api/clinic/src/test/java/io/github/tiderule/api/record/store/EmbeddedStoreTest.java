package io.github.tiderule.api.record.store;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.record.table.Page;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
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
      assertThat(Schema.KNOWN, is(newest));
    }
  }

  private static String pragma(Store store, String name) {
    return store.read(
        ledger -> ledger.handle().createQuery("PRAGMA " + name).mapTo(String.class).one());
  }

  @Test
  void aFileThatCannotGrowIsToldAsSuchAndWhatWasKeptStays() {
    try (Store store = Store.open(empty())) {
      Instant now = Instant.parse("2027-01-13T12:00:00Z");
      Person owner = store.change(ledger -> People.of(ledger).local(now));
      store.read(ledger -> ledger.handle().execute("PRAGMA max_page_count = 1"));
      AtomicInteger kept = new AtomicInteger();
      assertThrows(
          Unavailable.class,
          () -> {
            for (int i = 0; i < 10_000; i++) {
              String name = "bitch-" + i;
              String said = "{\"id\": \"" + name + "\", \"breed\": \"" + "x".repeat(100) + "\"}";
              store.change(ledger -> ledger.females().add(owner.key(), name, said, now));
              kept.incrementAndGet();
            }
          });
      Page.Wanted all = new Page.Wanted("", 20_000);
      assertThat(store.read(ledger -> ledger.females().all(all)).items().size(), is(kept.get()));
      assertThat(pragma(store, "integrity_check"), is("ok"));
    }
  }

  @Test
  void noOtherDatabaseIsTaken() {
    assertThrows(IllegalArgumentException.class, () -> Address.of("jdbc:h2:mem:x"));
  }
}
