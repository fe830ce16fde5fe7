package io.github.tiderule.api.fault;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.record.store.Address;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process killed in the middle of writes loses nothing it acknowledged. */
class KilledTest {

  private static final int ROUNDS =
      Integer.getInteger("tiderule.kills", Fault.atLength() ? 200 : 4);
  private static final int TOLD_EVERY = 20;
  private static final int WRITERS = 4;
  private static final int LEAST_WRITES = 5;
  private static final long SEED = 20270113;

  @TempDir private Path directory = Path.of("");

  @Test
  void whatWasAcknowledgedIsThereAfterwards() throws Exception {
    Random random = new Random(SEED);
    Path data = directory.resolve("record");
    Notebook notebook = new Notebook(Instant.now());
    for (int round = 0; round < ROUNDS; round++) {
      int before = notebook.acknowledged();
      killed(data, notebook, 300 + random.nextInt(900));
      assertThat("round " + round, notebook.acknowledged(), greaterThan(before + LEAST_WRITES));
      notebook.mustBeIn(Address.of(data.toString()));
      if ((round + 1) % TOLD_EVERY == 0 || round + 1 == ROUNDS) {
        tell(round + 1, notebook);
      }
    }
  }

  private static void tell(int rounds, Notebook notebook) {
    Fault.KILLED.seen(
        rounds
            + " rounds with "
            + WRITERS
            + " writers; "
            + notebook.acknowledged()
            + " acknowledged writes, all there after each round; integrity check ok each time.");
  }

  /** Writes until the process is killed. */
  private void killed(Path data, Notebook notebook, int afterMillis) throws Exception {
    try (ProcessOfOurs ours =
        ProcessOfOurs.serve(data.toString(), directory.resolve("killed.err"))) {
      int before = notebook.acknowledged();
      ExecutorService writers = Executors.newFixedThreadPool(WRITERS);
      List<Future<?>> all = new ArrayList<>();
      for (int writer = 0; writer < WRITERS; writer++) {
        all.add(writers.submit(() -> write(ours, notebook)));
      }
      while (notebook.acknowledged() < before + LEAST_WRITES) {
        for (Future<?> writer : all) {
          if (writer.isDone()) {
            // it fails, for nothing else ends a writer while the process lives
            writer.get();
          }
        }
        Thread.sleep(20);
      }
      Thread.sleep(afterMillis);
      ours.kill();
      writers.shutdown();
      for (Future<?> writer : all) {
        writer.get(60, TimeUnit.SECONDS);
      }
    }
  }

  private static void write(ProcessOfOurs ours, Notebook notebook) {
    try {
      String season = notebook.season(ours.client());
      while (true) {
        notebook.add(ours.client(), season).mustBe(201);
      }
    } catch (UncheckedIOException e) {
      if (!ours.isKilled()) {
        throw e;
      }
    }
  }

  @Test
  void toldToStopItStops() throws Exception {
    try (ProcessOfOurs ours =
        ProcessOfOurs.serve(
            directory.resolve("stopped").toString(), directory.resolve("stopped.err"))) {
      ours.client().get("/v1/health").mustBe(200);
      int endedByTheSignal = 128 + 15;
      assertThat(ours.stop(), is(endedByTheSignal));
    }
  }
}
