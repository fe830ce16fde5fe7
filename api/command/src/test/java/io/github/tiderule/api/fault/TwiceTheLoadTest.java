package io.github.tiderule.api.fault;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.api.record.store.Address;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Twice as many requests as it can answer: half of them advice that is kept, half observations.
 * What it can answer is measured first, in the same run.
 */
class TwiceTheLoadTest {

  private static final Duration MEASURED = Duration.ofSeconds(Fault.atLength() ? 60 : 4);
  private static final Duration LOADED = Duration.ofSeconds(Fault.atLength() ? 600 : 8);
  private static final int ADVISED = 8;
  private static final int WRITTEN = Fault.atLength() ? 150 : 20;
  private static final int VALUES = 6;
  private static final Duration SOON = Duration.ofSeconds(20);
  private static final double MOST_GROWTH = 1.2;

  @TempDir private Path directory = Path.of("");

  @Test
  void twiceTheLoadIsBornAndNothingAcknowledgedIsLost() throws Exception {
    String data = directory.resolve("record").toString();
    Notebook notebook = new Notebook(Instant.now());
    try (ProcessOfOurs ours = ProcessOfOurs.serve(data, directory.resolve("load.err"))) {
      Load load =
          new Load(
              ours.client(),
              notebook,
              seasons(ours, notebook, true),
              seasons(ours, notebook, false));
      int askers = 2 * Runtime.getRuntime().availableProcessors();
      // what a service can do just after its start is a part of what it can do
      load.closed(askers, MEASURED);
      double capacity = load.closed(askers, MEASURED);
      List<Integer> memory = new ArrayList<>();
      Load.Seen seen = load.open(2 * capacity, LOADED, () -> memory.add(ours.residentMib()));
      long recovered = recovered(ours.client(), notebook, load);
      assertThat(ours.isAlive(), is(true));
      ours.stop();
      notebook.mustBeIn(Address.of(data));
      assertThat(seen.toString(), seen.otherwise(), is(Map.of()));
      assertThat(seen.toString(), seen.done(), greaterThan(0));
      if (Fault.atLength()) {
        assertThat(seen.toString(), seen.sentAway(), greaterThan(0));
        assertThat(memory.toString(), (double) late(memory), lessThan(early(memory) * MOST_GROWTH));
      }
      Fault.TWICE_THE_LOAD.seen(words(capacity, seen, memory, recovered, notebook));
    }
  }

  private static List<String> seasons(ProcessOfOurs ours, Notebook notebook, boolean advised) {
    List<String> seasons = new ArrayList<>();
    for (int i = 0; i < (advised ? ADVISED : WRITTEN); i++) {
      String season = notebook.season(ours.client());
      for (int value = 0; advised && value < VALUES; value++) {
        notebook.add(ours.client(), season).mustBe(201);
      }
      seasons.add(season);
    }
    return seasons;
  }

  /** How long after the load until a change and an advice are answered within two seconds. */
  private static long recovered(Client client, Notebook notebook, Load load) {
    Instant over = Instant.now();
    while (true) {
      Instant from = Instant.now();
      boolean one = load.one(client, notebook);
      boolean theOther = load.one(client, notebook);
      if (one && theOther && Duration.between(from, Instant.now()).toSeconds() < 2) {
        return Duration.between(over, Instant.now()).toMillis();
      }
      assertThat(Duration.between(over, Instant.now()), lessThan(SOON));
    }
  }

  /** Greatest in the second tenth, when it is warm. */
  private static int early(List<Integer> memory) {
    return greatest(memory.subList(memory.size() / 10, memory.size() / 5));
  }

  private static int late(List<Integer> memory) {
    return greatest(memory.subList(memory.size() * 9 / 10, memory.size()));
  }

  private static int greatest(List<Integer> memory) {
    return memory.stream().mapToInt(Integer::intValue).max().orElse(0);
  }

  private static String words(
      double capacity, Load.Seen seen, List<Integer> memory, long recovered, Notebook notebook) {
    return String.format(
        Locale.ROOT,
        "%.0f requests/s measured, %.0f/s sent for %d s: %d done, %d sent away with 503 and"
            + " Retry-After, none otherwise; %d more not sent since %d were under way; answer after"
            + " %d ms in the middle, %d ms at the 99th percentile; resident memory %d MiB in the"
            + " second tenth, %d MiB in the last, at a heap of 256 MiB; itself again after %d ms; %d"
            + " acknowledged writes, all there.",
        capacity,
        2 * capacity,
        LOADED.toSeconds(),
        seen.done(),
        seen.sentAway(),
        seen.notSent(),
        Load.MOST_UNDER_WAY,
        seen.millisAt(0.5),
        seen.millisAt(0.99),
        memory.size() < 10 ? greatest(memory) : early(memory),
        memory.size() < 10 ? greatest(memory) : late(memory),
        recovered,
        notebook.acknowledged());
  }
}
