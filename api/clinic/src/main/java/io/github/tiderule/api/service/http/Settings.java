package io.github.tiderule.api.service.http;

import java.net.InetAddress;
import java.time.Duration;

/**
 * How a service is run.
 *
 * @param bind address it listens on
 * @param port port it listens on; 0 lets the system choose
 * @param usersNeeded whether people must sign in
 * @param behindTls whether it stands behind a server that speaks TLS for it and says in
 *     X-Forwarded-For who asks
 * @param limits what it takes on
 */
public record Settings(
    InetAddress bind, int port, boolean usersNeeded, boolean behindTls, Limits limits) {

  /** Fewer than there are threads, so that other requests are answered while these wait. */
  private static final int WAITING = 32;

  /** The port unless another is said. */
  public static final int USUAL_PORT = 8737;

  /**
   * What a service takes on.
   *
   * @param connections most connections at a time
   * @param perAddress most of them from one address, unless a server stands in front
   * @param threads most requests looked at at a time; some of these threads only tell whoever comes
   *     while the others are at work to come again
   * @param working most advice worked out at a time
   * @param waiting most requests that wait for their turn to have advice worked out; whoever comes
   *     then is told at once to come again
   * @param idle how long a connection may be silent
   * @param head how long the head of a request may take to arrive
   * @param turn how long a request waits for its turn
   * @param work how long working out one piece of advice may take
   * @param leastBytesPerSecond how fast a request must arrive, and its answer be taken
   * @param stop how long requests taken on have to finish when the service stops
   */
  public record Limits(
      int connections,
      int perAddress,
      int threads,
      int working,
      int waiting,
      Duration idle,
      Duration head,
      Duration turn,
      Duration work,
      int leastBytesPerSecond,
      Duration stop) {

    /** What suits a machine with so many processors. */
    public static Limits usual(int processors) {
      return new Limits(
          512,
          128,
          64,
          processors,
          WAITING,
          Duration.ofSeconds(30),
          Duration.ofSeconds(10),
          Duration.ofSeconds(10),
          Duration.ofSeconds(30),
          500,
          Duration.ofSeconds(20));
    }
  }
}
