package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.oneOf;

import io.github.tiderule.api.service.http.Settings;
import io.github.tiderule.format.Documents;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** More than can be answered: some are sent away at once, and nobody is answered wrongly. */
class OverloadTest {

  private static final int WAITING = 3;
  private static final Settings.Limits LIMITS =
      new Settings.Limits(
          64,
          64,
          32,
          1,
          WAITING,
          Duration.ofSeconds(30),
          Duration.ofSeconds(30),
          Duration.ofSeconds(60),
          Duration.ofSeconds(30),
          500,
          Duration.ofSeconds(20));

  private static void await(CountDownLatch latch) {
    try {
      assertThat(latch.await(60, TimeUnit.SECONDS), is(true));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static List<Asker.Got> all(int threads, Callable<Asker.Got> ask, int times)
      throws Exception {
    ExecutorService askers = Executors.newFixedThreadPool(threads);
    try {
      List<Asker.Got> got = new ArrayList<>();
      for (Future<Asker.Got> one : askers.invokeAll(Collections.nCopies(times, ask))) {
        got.add(one.get());
      }
      return got;
    } finally {
      askers.shutdown();
    }
  }

  @Test
  void whoComesWhenTheQueueIsFullIsSentAwayAtOnceAndTheOthersAreServed() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch end = new CountDownLatch(1);
    try (Desk desk =
        Desk.limited(
            LIMITS,
            cycle -> {
              begun.countDown();
              await(end);
              return Desk.TIDERULE.advise(cycle);
            })) {
      int asked = 10;
      CountDownLatch sentAway = new CountDownLatch(asked - 1 - WAITING);
      Callable<Asker.Got> ask =
          () -> {
            Asker.Got got = desk.asker().post("/v1/advice", Documents.cycleWith(""));
            if (got.status() == 503) {
              sentAway.countDown();
            }
            return got;
          };
      ExecutorService watcher = Executors.newSingleThreadExecutor();
      Future<List<Asker.Got>> answers = watcher.submit(() -> all(asked, ask, asked));
      await(begun);
      await(sentAway);
      // nobody else was answered yet: those sent away did not wait for those at work
      desk.asker().get("/v1/health").mustBe(200);
      end.countDown();
      List<Asker.Got> got = answers.get();
      watcher.shutdown();
      Map<Integer, Long> counts =
          got.stream().collect(Collectors.groupingBy(Asker.Got::status, Collectors.counting()));
      assertThat(counts, is(Map.of(200, 1L + WAITING, 503, (long) asked - 1 - WAITING)));
      for (Asker.Got one : got) {
        if (one.status() == 503) {
          assertThat(one.header("Retry-After"), is("1"));
        }
      }
    }
  }

  @Test
  void whatWasAcknowledgedIsKeptAndNothingElse() throws Exception {
    try (Desk desk = Desk.limited(LIMITS, Desk.TIDERULE::advise)) {
      String female =
          desk.asker().post("/v1/females", "{\"name\": \"Hazel\"}").mustBe(201).text("/key");
      String season =
          "{\"zone\": \"Europe/Vienna\","
              + " \"firstBlood\": {\"on\": \"2027-01-03\", \"certainty\": \"seen\"}}";
      String cycles = "/v1/females/" + female + "/cycles";
      String path =
          "/v1/cycles/" + desk.asker().post(cycles, season).mustBe(201).text("/key") + "/advice";
      int before = keys(desk.asker(), path).size();
      List<Asker.Got> got = all(16, () -> desk.asker().post(path, "{}"), 96);
      List<Integer> statuses = got.stream().map(Asker.Got::status).toList();
      assertThat(statuses, everyItem(is(oneOf(201, 503))));
      assertThat("there was an overload", statuses, hasItem(503));
      TreeSet<String> acknowledged = new TreeSet<>();
      for (Asker.Got one : got) {
        if (one.status() == 201) {
          acknowledged.add(one.header("Location").replaceFirst(".*/", ""));
        }
      }
      assertThat(acknowledged.size(), greaterThan(WAITING));
      Set<String> kept = keys(desk.asker(), path);
      assertThat(kept.size(), is(before + acknowledged.size()));
      assertThat(kept.containsAll(acknowledged), is(true));
      assertThat(desk.faults, is(List.of()));
    }
  }

  private static Set<String> keys(Asker asker, String path) {
    return new TreeSet<>(
        asker.get(path + "?limit=200").mustBe(200).json().path("items").findValuesAsText("key"));
  }
}
