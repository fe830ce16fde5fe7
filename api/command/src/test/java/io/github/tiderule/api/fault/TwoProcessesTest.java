package io.github.tiderule.api.fault;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.api.record.store.Address;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two processes serve one record, which nobody should want and somebody will do. */
class TwoProcessesTest {

  private static final int WRITES = Fault.atLength() ? 500 : 30;

  @TempDir private Path directory = Path.of("");

  @Test
  void bothWriteAndNothingIsLost() throws Exception {
    String data = directory.resolve("record").toString();
    Notebook notebook = new Notebook(Instant.now());
    ExecutorService writers = Executors.newFixedThreadPool(4);
    try (ProcessOfOurs one = ProcessOfOurs.serve(data, directory.resolve("one.err"));
        ProcessOfOurs other = ProcessOfOurs.serve(data, directory.resolve("other.err"))) {
      // the same season by both, and one of each's own
      String shared = notebook.season(one.client());
      List<Future<?>> all =
          List.of(
              writers.submit(() -> write(one.client(), notebook, shared)),
              writers.submit(() -> write(other.client(), notebook, shared)),
              writers.submit(() -> write(one.client(), notebook, notebook.season(one.client()))),
              writers.submit(
                  () -> write(other.client(), notebook, notebook.season(other.client()))));
      for (Future<?> writer : all) {
        writer.get(30, TimeUnit.MINUTES);
      }
      String path = Notebook.observations(shared) + "?limit=200";
      assertThat(other.client().get(path).mustBe(200), is(one.client().get(path).mustBe(200)));
    } finally {
      writers.shutdown();
    }
    notebook.mustBeIn(Address.of(data));
    assertThat(notebook.acknowledged(), is(4 * WRITES / 2));
    Fault.TWO_PROCESSES.seen(
        notebook.acknowledged()
            + " observations entered by both at once, half of them into one season: all"
            + " acknowledged with 201, all there; both list the same; integrity check ok.");
  }

  private static void write(Client client, Notebook notebook, String season) {
    for (int i = 0; i < WRITES / 2; i++) {
      notebook.add(client, season).mustBe(201);
    }
  }
}
