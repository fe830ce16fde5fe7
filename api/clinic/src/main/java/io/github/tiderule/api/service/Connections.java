package io.github.tiderule.api.service;

import io.github.tiderule.api.service.http.Settings;
import java.net.InetSocketAddress;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/**
 * Ends connections that hold a place and do not use it: whose request does not come to the end of
 * its head in time, and whose answer is not taken. Where there are too many, of one address or at
 * all, the one that has waited longest makes room, so that whoever means to ask is served.
 */
final class Connections extends Handler.Wrapper implements Connection.Listener {

  private static final Duration EACH = Duration.ofMillis(250);

  /** What is written piece by piece is taken to be so long. */
  private static final int USUAL_BYTES = 1 << 20;

  /** So many places in sixteen are kept free for whoever comes next. */
  private static final int SIXTEEN = 16;

  /** One connection. What changes is guarded by the whole. */
  private static final class Held {
    private final Connection connection;
    private final String address;
    private long waitsSince = System.nanoTime();
    private long headBy;
    private @Nullable Response writes;
    private long writesSince;

    Held(Connection connection, String address, Duration head) {
      this.connection = connection;
      this.address = address;
      this.headBy = waitsSince + head.toNanos();
    }

    boolean waits() {
      return writes == null;
    }

    void end() {
      connection.getEndPoint().close();
    }
  }

  private final Settings settings;
  private final Map<Connection, Held> all = new HashMap<>();
  private Scheduler.@Nullable Task next;

  Connections(Settings settings) {
    this.settings = settings;
  }

  @Override
  public void onOpened(Connection connection) {
    Held held = new Held(connection, address(connection), settings.limits().head());
    Held tooMany;
    synchronized (all) {
      all.put(connection, held);
      tooMany = tooMany(held);
    }
    if (tooMany != null) {
      tooMany.end();
    }
  }

  private static String address(Connection connection) {
    return connection.getEndPoint().getRemoteSocketAddress() instanceof InetSocketAddress from
            && from.getAddress() != null
        ? from.getAddress().getHostAddress()
        : "";
  }

  private @Nullable Held tooMany(Held latest) {
    Settings.Limits limits = settings.limits();
    // all that come through a server in front have its address
    if (!settings.behindTls() && count(latest.address) > limits.perAddress()) {
      return oldest(latest, held -> held.address.equals(latest.address));
    }
    int most = limits.connections() - Math.max(1, limits.connections() / SIXTEEN);
    return all.size() > most ? oldest(latest, held -> true) : null;
  }

  private long count(String address) {
    return all.values().stream().filter(held -> held.address.equals(address)).count();
  }

  /** The one that has waited longest; the latest itself where every other is being answered. */
  private Held oldest(Held latest, Predicate<Held> among) {
    return all.values().stream()
        .filter(held -> held != latest && held.waits() && among.test(held))
        .min(Comparator.comparingLong(held -> held.waitsSince))
        .orElse(latest);
  }

  @Override
  public void onClosed(Connection connection) {
    synchronized (all) {
      all.remove(connection);
    }
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    Connection connection = request.getConnectionMetaData().getConnection();
    synchronized (all) {
      Held held = all.get(connection);
      if (held != null) {
        held.writes = response;
        held.writesSince = 0;
      }
    }
    Request.addCompletionListener(request, failure -> done(connection));
    return super.handle(request, response, callback);
  }

  private void done(Connection connection) {
    synchronized (all) {
      Held held = all.get(connection);
      if (held != null) {
        held.writes = null;
        held.waitsSince = System.nanoTime();
        held.headBy =
            held.waitsSince + settings.limits().idle().plus(settings.limits().head()).toNanos();
      }
    }
  }

  private void look() {
    long now = System.nanoTime();
    List<Held> overdue = new ArrayList<>();
    synchronized (all) {
      for (Held held : all.values()) {
        if (held.waits() ? now - held.headBy > 0 : isNotTaken(held, now)) {
          overdue.add(held);
        }
      }
    }
    overdue.forEach(Held::end);
    lookLater();
  }

  /** Whether an answer has been on its way for longer than the slowest line would need. */
  private boolean isNotTaken(Held held, long now) {
    Response response = Objects.requireNonNull(held.writes);
    if (!response.isCommitted()) {
      return false;
    }
    if (held.writesSince == 0) {
      held.writesSince = now;
      return false;
    }
    long said = response.getHeaders().getLongField(HttpHeader.CONTENT_LENGTH);
    long bytes = said < 0 ? USUAL_BYTES : said;
    long mayTake =
        settings.limits().idle().toNanos()
            + TimeUnit.SECONDS.toNanos(bytes / settings.limits().leastBytesPerSecond());
    return now - held.writesSince > mayTake;
  }

  private void lookLater() {
    if (isRunning() || isStarting()) {
      next =
          getServer().getScheduler().schedule(this::look, EACH.toMillis(), TimeUnit.MILLISECONDS);
    }
  }

  @Override
  protected void doStart() throws Exception {
    super.doStart();
    lookLater();
  }

  @Override
  protected void doStop() throws Exception {
    Scheduler.Task task = next;
    if (task != null) {
      task.cancel();
    }
    super.doStop();
  }
}
