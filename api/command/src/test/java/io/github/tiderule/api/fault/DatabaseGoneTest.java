package io.github.tiderule.api.fault;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.api.record.store.Address;
import io.github.tiderule.api.record.store.PostgresServer;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The database server stops under a service that goes on being asked, and comes back. */
class DatabaseGoneTest {

  private static final int TIMES = Fault.atLength() ? 5 : 1;
  private static final int WRITERS = 4;
  private static final int LEAST_WRITES = 20;
  private static final Duration LONGEST_ANSWER = Duration.ofSeconds(20);
  private static final Duration GONE = Duration.ofSeconds(Fault.atLength() ? 15 : 1);
  private static final Duration SOON = Duration.ofSeconds(30);

  @TempDir private Path directory = Path.of("");

  private final AtomicInteger refused = new AtomicInteger();
  private final AtomicInteger slowestMillis = new AtomicInteger();

  @Test
  void itIsRefusedWhileTheServerIsGoneAndGoesOnAfterwards() throws Exception {
    Notebook notebook = new Notebook(Instant.now());
    List<Long> back = new ArrayList<>();
    try (PostgresServer server = PostgresServer.start()) {
      Address address = server.database();
      try (ProcessOfOurs ours =
          ProcessOfOurs.serve(address.jdbc(), directory.resolve("gone.err"))) {
        for (int i = 0; i < TIMES; i++) {
          back.add(gone(server, ours.client(), notebook));
        }
        assertThat(ours.isAlive(), is(true));
        ours.stop();
      }
      notebook.mustBeIn(address);
    }
    Fault.DATABASE_GONE.seen(
        "stopped at once under "
            + WRITERS
            + " writers, "
            + TIMES
            + " times, for "
            + GONE.toSeconds()
            + " s and more; "
            + refused
            + " requests refused, all with 503 and Retry-After, the slowest after "
            + slowestMillis
            + " ms; first change after the server was back, in ms: "
            + back
            + "; "
            + notebook.acknowledged()
            + " acknowledged writes, all there.");
  }

  /** Stops the server under writers and starts it again; gives how long until a change is made. */
  private long gone(PostgresServer server, Client client, Notebook notebook) throws Exception {
    int before = notebook.acknowledged();
    int refusedBefore = refused.get();
    AtomicBoolean over = new AtomicBoolean();
    ExecutorService writers = Executors.newFixedThreadPool(WRITERS);
    List<Future<?>> all = new ArrayList<>();
    for (int i = 0; i < WRITERS; i++) {
      String season = notebook.season(client);
      all.add(writers.submit(() -> write(client, notebook, season, over)));
    }
    while (notebook.acknowledged() < before + LEAST_WRITES) {
      Thread.sleep(20);
    }
    server.stopAtOnce();
    Thread.sleep(GONE.toMillis());
    while (refused.get() < refusedBefore + WRITERS) {
      Thread.sleep(20);
    }
    int whileGone = notebook.acknowledged();
    server.startAgain();
    Instant started = Instant.now();
    while (notebook.acknowledged() == whileGone) {
      assertThat(Duration.between(started, Instant.now()), lessThan(SOON));
      Thread.sleep(10);
    }
    long millis = Duration.between(started, Instant.now()).toMillis();
    over.set(true);
    writers.shutdown();
    for (Future<?> writer : all) {
      writer.get(60, TimeUnit.SECONDS);
    }
    assertThat(refused.get(), greaterThan(refusedBefore));
    return millis;
  }

  private void write(Client client, Notebook notebook, String season, AtomicBoolean over) {
    while (!over.get()) {
      long from = System.nanoTime();
      Client.Got got = notebook.add(client, season);
      int millis = (int) Duration.ofNanos(System.nanoTime() - from).toMillis();
      if (got.status() != 201) {
        assertThat(got.toString(), got.isSentAway());
        refused.incrementAndGet();
        slowestMillis.accumulateAndGet(millis, Math::max);
        assertThat(Duration.ofMillis(millis), lessThan(LONGEST_ANSWER));
      }
    }
  }
}
