package io.github.tiderule.api.fault;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** Requests by the thousand: every other one for advice that is kept, the others observations. */
final class Load {

  /** So many may be unanswered at a time; the service takes a few more connections. */
  static final int MOST_UNDER_WAY = 450;

  private static final long NANOS_A_SECOND = 1_000_000_000L;

  /**
   * What came of them.
   *
   * @param done how many were carried out
   * @param sentAway how many were told when to come again
   * @param notSent how many were not sent, since too many were under way
   * @param otherwise what else was answered, and how often
   * @param millis how long each answer took, ascending
   */
  record Seen(
      int done, int sentAway, int notSent, Map<String, Integer> otherwise, List<Integer> millis) {

    int millisAt(double share) {
      return millis.isEmpty() ? 0 : millis.get((int) ((millis.size() - 1) * share));
    }

    @Override
    public String toString() {
      return done + " done, " + sentAway + " sent away, " + notSent + " not sent, " + otherwise;
    }
  }

  private final Client client;
  private final Notebook notebook;
  private final List<String> advised;
  private final List<String> written;
  private final AtomicInteger counter = new AtomicInteger();
  private final AtomicInteger done = new AtomicInteger();
  private final AtomicInteger sentAway = new AtomicInteger();
  private final Map<String, Integer> otherwise = new ConcurrentHashMap<>();
  private final List<Integer> millis = Collections.synchronizedList(new ArrayList<>());

  /**
   * @param advised seasons that advice is asked on
   * @param written seasons that observations are entered into
   */
  Load(Client client, Notebook notebook, List<String> advised, List<String> written) {
    this.client = client;
    this.notebook = notebook;
    this.advised = advised;
    this.written = written;
  }

  /** How many a second are done by so many askers who wait for their answers. */
  double closed(int askers, Duration time) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(askers);
    long from = System.nanoTime();
    long until = from + time.toNanos();
    List<Future<Integer>> all = new ArrayList<>();
    for (int i = 0; i < askers; i++) {
      all.add(
          threads.submit(
              () -> {
                int count = 0;
                while (System.nanoTime() < until) {
                  count += one(client, notebook) ? 1 : 0;
                }
                return count;
              }));
    }
    int count = 0;
    for (Future<Integer> asker : all) {
      count += asker.get();
    }
    threads.shutdown();
    return count * (double) NANOS_A_SECOND / (System.nanoTime() - from);
  }

  /** Sends the next request, of one kind or the other; whether it was carried out. */
  boolean one(Client asked, Notebook notes) {
    int number = counter.getAndIncrement();
    if (number % 2 == 0) {
      String season = advised.get(number / 2 % advised.size());
      Client.Got got = asked.post(Notebook.advice(season), "{}");
      notes.noteAdvice(season, got);
      return got.status() == 201;
    }
    return notes.add(asked, written.get(number / 2 % written.size())).status() == 201;
  }

  /**
   * Sends so many a second, whatever becomes of them, and waits for the answers.
   *
   * @param everySecond run once a second meanwhile
   */
  Seen open(double perSecond, Duration time, Runnable everySecond) throws InterruptedException {
    Semaphore underWay = new Semaphore(MOST_UNDER_WAY);
    long from = System.nanoTime();
    int notSent = 0;
    long seconds = 0;
    long total = (long) (perSecond * time.toSeconds());
    for (long i = 0; i < total; i++) {
      long due = from + (long) (i / perSecond * NANOS_A_SECOND);
      long wait = due - System.nanoTime();
      if (wait > 0) {
        Thread.sleep(wait / 1_000_000, (int) (wait % 1_000_000));
      }
      if ((System.nanoTime() - from) / NANOS_A_SECOND > seconds) {
        seconds++;
        everySecond.run();
      }
      if (underWay.tryAcquire()) {
        send(underWay);
      } else {
        notSent++;
      }
    }
    underWay.acquire(MOST_UNDER_WAY);
    List<Integer> sorted = new ArrayList<>(millis);
    Collections.sort(sorted);
    return new Seen(done.get(), sentAway.get(), notSent, Map.copyOf(otherwise), sorted);
  }

  private void send(Semaphore underWay) {
    int number = counter.getAndIncrement();
    boolean advice = number % 2 == 0;
    List<String> seasons = advice ? advised : written;
    String season = seasons.get(number / 2 % seasons.size());
    String id = notebook.freshId();
    long from = System.nanoTime();
    var unused =
        (advice
                ? client.postLater(Notebook.advice(season), "{}")
                : client.postLater(Notebook.observations(season), notebook.observation(id)))
            .whenComplete(
                (got, failure) -> {
                  millis.add((int) Duration.ofNanos(System.nanoTime() - from).toMillis());
                  if (got != null && advice) {
                    notebook.noteAdvice(season, got);
                  } else if (got != null) {
                    notebook.noteObservation(season, id, got);
                  }
                  count(got, failure);
                  underWay.release();
                });
  }

  private void count(Client.@Nullable Got got, @Nullable Throwable failure) {
    if (got != null && got.status() == 201) {
      done.incrementAndGet();
    } else if (got != null && got.isSentAway()) {
      sentAway.incrementAndGet();
    } else {
      otherwise.merge(String.valueOf(got == null ? failure : got), 1, Integer::sum);
    }
  }
}
