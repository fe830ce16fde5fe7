package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.record.Address;
import io.github.tiderule.api.record.Page;
import io.github.tiderule.api.record.Store;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Queue;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process killed in the middle of writes loses nothing it acknowledged. */
class KilledTest {

  private static final int ROUNDS = Integer.getInteger("tiderule.kills", 4);
  private static final int WRITERS = 4;
  private static final long SEED = 20270113;

  @TempDir private Path directory = Path.of("");

  @Test
  void whatWasAcknowledgedIsThereAfterwards() throws Exception {
    Random random = new Random(SEED);
    Path data = directory.resolve("record");
    Set<String> acknowledged = new HashSet<>();
    for (int round = 0; round < ROUNDS; round++) {
      acknowledged.addAll(killed(data, round, 300 + random.nextInt(900)));
      Set<String> kept = kept(data);
      assertThat("round " + round, kept, hasItems(acknowledged.toArray(String[]::new)));
    }
    assertThat(acknowledged.size(), greaterThan(ROUNDS * 5));
  }

  /** Writes until the process is killed; gives what it acknowledged. */
  private static Queue<String> killed(Path data, int round, int afterMillis) throws Exception {
    Queue<String> acknowledged = new ConcurrentLinkedQueue<>();
    try (ProcessOfOurs ours = ProcessOfOurs.serve(data)) {
      ExecutorService writers = Executors.newFixedThreadPool(WRITERS);
      AtomicBoolean over = new AtomicBoolean();
      for (int writer = 0; writer < WRITERS; writer++) {
        String name = "r" + round + "w" + writer;
        writers.execute(() -> write(ours.asker(), name, acknowledged, over));
      }
      while (acknowledged.size() < WRITERS) {
        Thread.sleep(20);
      }
      Thread.sleep(afterMillis);
      ours.kill();
      over.set(true);
      writers.shutdown();
      assertThat(writers.awaitTermination(60, TimeUnit.SECONDS), is(true));
    }
    return acknowledged;
  }

  private static void write(
      Asker asker, String name, Queue<String> acknowledged, AtomicBoolean over) {
    try {
      for (int i = 0; !over.get(); i++) {
        String id = name + "n" + i;
        String key = asker.post("/v1/females", "{\"id\": \"" + id + "\"}").mustBe(201).text("/key");
        acknowledged.add(id);
        asker
            .with("If-Match", "\"1\"")
            .put("/v1/females/" + key, "{\"id\": \"" + id + "-again\"}")
            .mustBe(200);
        acknowledged.add(id + "-again");
      }
    } catch (UncheckedIOException e) {
      // the process is gone, as it should be
    }
  }

  private static Set<String> kept(Path data) {
    Set<String> ids = new HashSet<>();
    try (Store store = Store.open(Address.of(data.toString()))) {
      String sound =
          store.read(
              ledger ->
                  ledger
                      .handle()
                      .createQuery("PRAGMA integrity_check")
                      .mapTo(String.class)
                      .first());
      assertThat(sound, is("ok"));
      store
          .read(ledger -> ledger.females().all(new Page.Wanted("", 1_000_000)))
          .items()
          .forEach(female -> ids.addAll(List.of(female.handle(), before(female.handle()))));
    }
    return ids;
  }

  /** The name she had first, which whoever was told of her may know her by. */
  private static String before(String name) {
    return name.replace("-again", "");
  }

  @Test
  void toldToStopItStops() throws Exception {
    try (ProcessOfOurs ours = ProcessOfOurs.serve(directory.resolve("stopped"))) {
      ours.asker().get("/v1/health").mustBe(200);
      int endedByTheSignal = 128 + 15;
      assertThat(ours.stop(), is(endedByTheSignal));
    }
  }
}
