package io.github.tiderule.api.record.store;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.instanceOf;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.record.Change;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.GivenAdvice;
import io.github.tiderule.api.record.KeptAnswers;
import io.github.tiderule.api.record.table.Conflict;
import io.github.tiderule.api.record.table.Keys;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.format.Documents;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What every kind of record must do; each kind of database runs it. */
abstract class StoreTest {

  static final Instant NOW = Instant.parse("2027-01-13T12:00:00Z");
  private static final String SEASON =
      "{\"zone\":\"Europe/Vienna\",\"firstBlood\":{\"on\":\"2027-01-03\",\"certainty\":\"seen\"}}";

  @TempDir Path directory = Path.of("");

  /** An empty record of this kind. */
  abstract Address empty();

  private Store open() {
    return Store.open(empty());
  }

  private static String observation(String id, double value) {
    return "{\"id\":\""
        + id
        + "\",\"kind\":\"progesterone\",\"at\":\"2027-01-08T08:00:00+01:00\",\"value\":"
        + value
        + ",\"unit\":\"ng/mL\"}";
  }

  private static Cycle season(Store store, String name) {
    return store.change(
        ledger -> {
          People.of(ledger).local(NOW);
          Female female =
              ledger.females().add(Person.LOCAL, name, "{\"id\":\"" + name + "\"}", NOW);
          return ledger.cycles().add(female.key(), SEASON, null, Person.LOCAL, NOW);
        });
  }

  private static Entry add(Store store, Cycle cycle, String id, double value) {
    return store.change(
        ledger ->
            ledger.entries().add(cycle.key(), id, observation(id, value), Person.LOCAL, NOW, NOW));
  }

  @Test
  void observationsAreNeverOverwritten() {
    try (Store store = open()) {
      Cycle cycle = season(store, "juniper");
      Entry first = add(store, cycle, "p1", 2.1);
      Entry second =
          store.change(
              ledger ->
                  ledger
                      .entries()
                      .replace(first, observation("p1", 2.4), "misread", Person.LOCAL, NOW, NOW));
      assertThat(second.replaces(), is(first.number()));
      List<Entry> history = store.read(ledger -> ledger.entries().history(cycle.key(), "p1"));
      assertThat(history, is(List.of(first, second)));
      assertThat(store.read(ledger -> ledger.entries().current(cycle.key())), is(List.of(second)));
      Conflict late =
          assertThrows(
              Conflict.class,
              () ->
                  store.change(
                      ledger ->
                          ledger
                              .entries()
                              .replace(first, null, "too late", Person.LOCAL, NOW, NOW)));
      assertThat(late.kind(), is(Conflict.Kind.CHANGED));
      Entry gone =
          store.change(
              ledger -> ledger.entries().replace(second, null, "not hers", Person.LOCAL, NOW, NOW));
      assertThat(gone.change(), is(Change.RETRACTED));
      assertThat(store.read(ledger -> ledger.entries().current(cycle.key())), hasSize(0));
      assertThat(
          assertThrows(Conflict.class, () -> add(store, cycle, "p1", 1)).kind(),
          is(Conflict.Kind.TAKEN));
      assertThat(
          store.read(ledger -> ledger.entries().all(cycle.key(), Page.Wanted.FIRST)).items(),
          is(List.of(first, second, gone)));
    }
  }

  @Test
  void aChangeIsWholeOrNotAtAll() {
    try (Store store = open()) {
      Cycle cycle = season(store, "juniper");
      assertThrows(
          IllegalStateException.class,
          () ->
              store.change(
                  ledger -> {
                    ledger
                        .entries()
                        .add(cycle.key(), "p1", observation("p1", 1), Person.LOCAL, NOW, NOW);
                    throw new IllegalStateException("half way");
                  }));
      assertThat(store.read(ledger -> ledger.entries().current(cycle.key())), hasSize(0));
      assertThat(
          store.read(ledger -> ledger.cycles().find(cycle.key())).orElseThrow().entries(), is(0));
    }
  }

  @Test
  void aVersionIsChangedOnce() {
    try (Store store = open()) {
      Cycle cycle = season(store, "juniper");
      Female female = store.read(ledger -> ledger.females().find(cycle.female())).orElseThrow();
      Female shared =
          store.change(ledger -> ledger.females().share(female, true, Person.LOCAL, NOW));
      assertThat(shared.version(), is(2));
      assertThrows(
          Conflict.class,
          () -> store.change(ledger -> ledger.females().share(female, false, Person.LOCAL, NOW)));
      assertThat(
          store.read(ledger -> ledger.females().find(female.key())).orElseThrow(), is(shared));
      Cycle changed =
          store.change(
              ledger -> ledger.cycles().change(cycle, SEASON + " ", NOW, Person.LOCAL, NOW));
      assertThat(
          store.read(ledger -> ledger.cycles().find(cycle.key())).orElseThrow(), is(changed));
      assertThrows(
          Conflict.class,
          () ->
              store.change(
                  ledger -> ledger.cycles().change(cycle, SEASON, null, Person.LOCAL, NOW)));
    }
  }

  @Test
  void manyWhoEnterAtOnceAllGetTheirTurn() throws Exception {
    try (Store store = open()) {
      Cycle cycle = season(store, "juniper");
      ExecutorService threads = Executors.newFixedThreadPool(8);
      List<Future<Entry>> entered = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        String id = "p" + i;
        entered.add(threads.submit(() -> add(store, cycle, id, 1)));
      }
      List<Integer> numbers = new ArrayList<>();
      for (Future<Entry> one : entered) {
        numbers.add(one.get().number());
      }
      threads.shutdown();
      numbers.sort(null);
      assertThat(numbers, is(IntStream.rangeClosed(1, 40).boxed().toList()));
    }
  }

  @Test
  void ofManyWhoAddTheSameOneDoes() throws Exception {
    try (Store store = open()) {
      store.change(ledger -> People.of(ledger).local(NOW));
      ExecutorService threads = Executors.newFixedThreadPool(8);
      List<Future<Boolean>> added = new ArrayList<>();
      for (int i = 0; i < 16; i++) {
        added.add(
            threads.submit(
                () -> {
                  try {
                    store.change(ledger -> ledger.females().add(Person.LOCAL, "same", "{}", NOW));
                    return true;
                  } catch (Conflict e) {
                    assertThat(e.kind(), is(Conflict.Kind.TAKEN));
                    return false;
                  }
                }));
      }
      int count = 0;
      for (Future<Boolean> one : added) {
        count += one.get() ? 1 : 0;
      }
      threads.shutdown();
      assertThat(count, is(1));
    }
  }

  @Test
  void ofTwoWithTheSameKeyOneIsCarriedOut() throws Exception {
    try (Store store = open()) {
      season(store, "juniper");
      AtomicInteger carriedOut = new AtomicInteger();
      ExecutorService threads = Executors.newFixedThreadPool(4);
      List<Future<String>> answers = new ArrayList<>();
      for (int i = 0; i < 8; i++) {
        answers.add(
            threads.submit(
                () ->
                    store.change(
                        ledger -> {
                          KeptAnswers kept = ledger.keptAnswers();
                          return kept.take(Person.LOCAL, "k", "f", NOW)
                              .map(KeptAnswers.Kept::body)
                              .orElseGet(
                                  () -> {
                                    String body = "body " + carriedOut.incrementAndGet();
                                    kept.keep(
                                        Person.LOCAL,
                                        "k",
                                        new KeptAnswers.Kept("f", 201, body, null, null));
                                    return body;
                                  });
                        })));
      }
      for (Future<String> one : answers) {
        assertThat(one.get(), is("body 1"));
      }
      threads.shutdown();
      assertThat(
          store.read(ledger -> ledger.keptAnswers().take(Person.LOCAL, "k", "f", NOW)).isPresent(),
          is(true));
      Instant later = NOW.plus(KeptAnswers.KEPT).plus(Duration.ofSeconds(1));
      assertThat(
          store
              .change(ledger -> ledger.keptAnswers().take(Person.LOCAL, "k", "f", later))
              .isPresent(),
          is(false));
    }
  }

  private static List<Entry> history(Store store, Cycle cycle) {
    return store.read(ledger -> ledger.entries().history(cycle.key(), "p1"));
  }

  private static List<GivenAdvice> advice(Store store, Cycle cycle) {
    return store.read(ledger -> ledger.advices().of(cycle.key(), Page.Wanted.FIRST).items());
  }

  private static List<String> exported(Store store) {
    List<String> lines = new ArrayList<>();
    Transfer.export(store, null, lines::add);
    return lines;
  }

  private static Transfer.Outcome take(Store store, String line) {
    return Transfer.take(
        store, Person.LOCAL, line.getBytes(StandardCharsets.UTF_8), NOW.plusSeconds(60));
  }

  @Test
  void whatIsExportedCanBeImportedAndComesOutTheSame() {
    try (Store store = open();
        Store other = open()) {
      add(store, season(store, "juniper"), "p1", 2.1);
      season(store, "hazel");
      List<String> lines = exported(store);
      assertThat(lines, hasSize(2));
      lines.forEach(Documents::read);
      other.change(ledger -> People.of(ledger).local(NOW));
      for (String line : lines) {
        assertThat(line, take(other, line), instanceOf(Transfer.Outcome.Added.class));
      }
      assertThat(exported(other), is(lines));
      for (String line : lines) {
        assertThat(line, take(other, line), instanceOf(Transfer.Outcome.There.class));
      }
      assertThat(exported(other), is(lines));
    }
  }

  @Test
  void importAddsAndRefusesButOverwritesNothing() {
    try (Store store = open()) {
      store.change(ledger -> People.of(ledger).local(NOW));
      String file = Documents.fullCycle().replace("\n", " ");
      assertThat(take(store, file), instanceOf(Transfer.Outcome.Added.class));
      List<String> before = exported(store);
      String other = file.replace("\"value\": 2.1", "\"value\": 2.2");
      assertThat(other, is(not(file)));
      Transfer.Outcome refused = take(store, other);
      assertThat(refused, instanceOf(Transfer.Outcome.Refused.class));
      assertThat(refused.toString(), containsString("/observations/0/id"));
      assertThat(exported(store), is(before));
      assertThat(take(store, "{\"schema\": 1}"), instanceOf(Transfer.Outcome.Refused.class));
      Transfer.Outcome nobody = take(store, Documents.cycleWith("").replace("\n", " "));
      assertThat(nobody.toString(), containsString("/female/id"));
    }
  }

  @Test
  void aSeasonLongPastKeepsTheMomentItIsLookedAtFrom() {
    try (Store store = open()) {
      store.change(ledger -> People.of(ledger).local(NOW));
      String old = Documents.fullCycle().replace("\n", " ");
      Instant years = NOW.plus(Duration.ofDays(2000));
      assertThat(
          Transfer.take(store, Person.LOCAL, old.getBytes(StandardCharsets.UTF_8), years),
          instanceOf(Transfer.Outcome.Added.class));
      exported(store).forEach(Documents::read);
    }
  }

  @Test
  void aBackupHoldsAllAndFillsAnEmptyRecordOfEitherKind() throws IOException {
    Path file = directory.resolve("backup.db");
    try (Store store = open();
        Store other = open();
        Store embedded = Store.open(Address.ofFile(directory.resolve("other.db")))) {
      Cycle cycle = season(store, "juniper");
      Entry first = add(store, cycle, "p1", 2.1);
      store.change(ledger -> ledger.entries().replace(first, null, "x", Person.LOCAL, NOW, NOW));
      store.change(
          ledger -> {
            ledger
                .advices()
                .add(
                    new GivenAdvice(
                        Keys.next(NOW), cycle.key(), NOW, NOW, Person.LOCAL, "e", "r", "{}", "{}"));
            return true;
          });
      Backup.write(store, file);
      assertThrows(IllegalArgumentException.class, () -> Backup.write(store, file));
      for (Store into : List.of(other, embedded)) {
        assertThat(Backup.restore(file, into), greaterThan(5));
        assertThat(history(into, cycle), is(history(store, cycle)));
        assertThat(advice(into, cycle), is(advice(store, cycle)));
        assertThat(advice(into, cycle), hasSize(1));
        assertThat(exported(into), is(exported(store)));
        assertThrows(IllegalArgumentException.class, () -> Backup.restore(file, into));
      }
      Path broken = Files.write(directory.resolve("broken.db"), new byte[5000]);
      try (Store fresh = open()) {
        assertThrows(RuntimeException.class, () -> Backup.restore(broken, fresh));
        assertThrows(
            IllegalArgumentException.class,
            () -> Backup.restore(directory.resolve("none.db"), fresh));
        assertThat(exported(fresh), hasSize(0));
      }
    }
  }

  @Test
  void itOpensAgainAsItWas() {
    Address address = empty();
    List<String> lines;
    try (Store store = Store.open(address)) {
      add(store, season(store, "juniper"), "p1", 2.1);
      lines = exported(store);
    }
    for (int again = 0; again < 2; again++) {
      try (Store store = Store.open(address)) {
        assertThat(exported(store), is(lines));
      }
    }
  }
}
