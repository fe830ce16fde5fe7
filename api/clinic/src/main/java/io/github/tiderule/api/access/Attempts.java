package io.github.tiderule.api.access;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Counts attempts to sign in. An attempt is counted before the password is looked at, and forgotten
 * if it was right; so many at once are as many.
 *
 * <p>After five for one name from one network, whoever tries so must wait, from half a minute on,
 * twice as long each time, up to an hour; after twenty from one network, likewise for any name. A
 * name alone is never locked: after fifty from anywhere, those who never signed in from where they
 * are wait half a minute between two attempts, and whoever did does not.
 *
 * <p>Of each it remembers the last ten thousand, until the process ends. Thread-safe.
 */
public final class Attempts {

  /** Most characters of a name; a longer one is nobody's, and is not kept. */
  public static final int LONGEST_NAME = 120;

  private static final int LONGEST_ADDRESS = 64;
  private static final Pattern LONG_ADDRESS =
      Pattern.compile("\\[?[0-9a-fA-F:.]*:[0-9a-fA-F:.]*]?");
  private static final int LONG_BYTES = 16;
  private static final int FREE_FOR_BOTH = 5;
  private static final int FREE_FOR_NETWORK = 20;
  private static final int FREE_FOR_NAME = 50;
  private static final Duration FIRST_WAIT = Duration.ofSeconds(30);
  private static final Duration LONGEST_WAIT = Duration.ofHours(1);
  private static final int MOST_REMEMBERED = 10_000;
  private static final int MOST_DOUBLINGS = 7;

  /** What may be counted: so many are free, and from then on one waits ever longer, or not. */
  private enum Kind {
    BOTH(FREE_FOR_BOTH, MOST_DOUBLINGS),
    NETWORK(FREE_FOR_NETWORK, MOST_DOUBLINGS),
    NAME(FREE_FOR_NAME, 0);

    private final int free;
    private final int doublings;

    Kind(int free, int doublings) {
      this.free = free;
      this.doublings = doublings;
    }
  }

  private record Counted(Kind kind, String of) {}

  private record Failures(int count, Instant until) {}

  private static final class Remembered extends LinkedHashMap<String, Failures> {
    private static final long serialVersionUID = 1L;

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, Failures> eldest) {
      return size() > MOST_REMEMBERED;
    }
  }

  private final Map<Kind, Remembered> remembered =
      Map.of(
          Kind.BOTH, new Remembered(),
          Kind.NETWORK, new Remembered(),
          Kind.NAME, new Remembered());

  /** Whether so many failed for a name that it counts where one comes from. */
  public synchronized boolean isTriedByMany(String name) {
    Failures failures = of(Kind.NAME).get(name);
    return failures != null && failures.count() >= FREE_FOR_NAME;
  }

  /**
   * Begins an attempt, which counts as failed until it has succeeded.
   *
   * @param name at most {@link #LONGEST_NAME} characters
   * @param isUsual whether that person signed in from there before
   * @return how long one must wait before it; zero or less when it was begun
   */
  public synchronized Duration begin(String name, String address, boolean isUsual, Instant now) {
    List<Counted> counted = counted(name, address, isUsual);
    for (Counted one : counted) {
      Failures failures = of(one.kind()).get(one.of());
      if (failures != null && failures.until().isAfter(now)) {
        return Duration.between(now, failures.until());
      }
    }
    counted.forEach(one -> count(one, now));
    return Duration.ZERO;
  }

  private static List<Counted> counted(String name, String address, boolean isUsual) {
    String network = network(address);
    Counted both = new Counted(Kind.BOTH, network + ' ' + name);
    Counted all = new Counted(Kind.NETWORK, network);
    return isUsual ? List.of(both, all) : List.of(both, all, new Counted(Kind.NAME, name));
  }

  private void count(Counted one, Instant now) {
    Remembered of = of(one.kind());
    Failures before = of.remove(one.of());
    boolean anew = before == null || before.until().plus(LONGEST_WAIT).isBefore(now);
    int count = before == null || anew ? 1 : before.count() + 1;
    int beyond = count - one.kind().free;
    Duration wait = Duration.ZERO;
    if (beyond >= 0) {
      wait = FIRST_WAIT.multipliedBy(1L << Math.min(beyond, one.kind().doublings));
    }
    Duration most = wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait;
    of.put(one.of(), new Failures(count, now.plus(most)));
  }

  /** Forgets the failures after a success. */
  public synchronized void succeeded(String name, String address) {
    for (Counted one : counted(name, address, false)) {
      of(one.kind()).remove(one.of());
    }
  }

  private Remembered of(Kind kind) {
    Remembered of = remembered.get(kind);
    if (of == null) {
      throw new IllegalStateException("nothing remembers " + kind);
    }
    return of;
  }

  /** Of the long addresses whoever has one has as many as they like: the first half is one. */
  private static String network(String address) {
    String written =
        address.length() <= LONGEST_ADDRESS ? address : address.substring(0, LONGEST_ADDRESS);
    if (!LONG_ADDRESS.matcher(written).matches()) {
      return written;
    }
    try {
      byte[] bytes = InetAddress.getByName(written).getAddress();
      return bytes.length == LONG_BYTES
          ? HexFormat.of().formatHex(bytes, 0, LONG_BYTES / 2)
          : written;
    } catch (UnknownHostException e) {
      return written;
    }
  }
}
