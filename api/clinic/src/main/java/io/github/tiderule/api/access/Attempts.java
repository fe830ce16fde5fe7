package io.github.tiderule.api.access;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Counts failed attempts to sign in, for each name and for each network address. After five in a
 * row whoever tries must wait, from half a minute on, twice as long each time, up to an hour. It
 * remembers the last ten thousand, until the process ends. Thread-safe.
 */
public final class Attempts {

  private static final int FREE = 5;
  private static final Duration FIRST_WAIT = Duration.ofSeconds(30);
  private static final Duration LONGEST_WAIT = Duration.ofHours(1);
  private static final int MOST_REMEMBERED = 10_000;

  private record Failures(int count, Instant until) {}

  private final Map<String, Failures> byWhat =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Failures> eldest) {
          return size() > MOST_REMEMBERED;
        }
      };

  /** How long one must wait before another attempt; zero or less when one may try now. */
  public synchronized Duration wait(String what, Instant now) {
    Failures failures = byWhat.get(what);
    return failures == null ? Duration.ZERO : Duration.between(now, failures.until());
  }

  /** Notes a failed attempt. */
  public synchronized void failed(String what, Instant now) {
    Failures before = byWhat.remove(what);
    int count =
        before == null || before.until().plus(LONGEST_WAIT).isBefore(now) ? 1 : before.count() + 1;
    Duration wait = Duration.ZERO;
    if (count >= FREE) {
      int doublings = Math.min(count - FREE, 7);
      wait = FIRST_WAIT.multipliedBy(1L << doublings);
      if (wait.compareTo(LONGEST_WAIT) > 0) {
        wait = LONGEST_WAIT;
      }
    }
    byWhat.put(what, new Failures(count, now.plus(wait)));
  }

  /** Forgets the failures after a success. */
  public synchronized void succeeded(String what) {
    byWhat.remove(what);
  }
}
