package io.github.tiderule.api.service;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.record.store.Unavailable;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Caller;
import io.github.tiderule.api.service.http.Environment;
import io.github.tiderule.api.service.http.Gate;
import io.github.tiderule.api.service.http.Guard;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.service.http.Settings;
import io.github.tiderule.api.service.http.Site;
import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.stream.Stream;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.GracefulHandler;
import org.eclipse.jetty.server.handler.MinimumDataRateHandler;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.jspecify.annotations.Nullable;

/** The running service. */
public final class Service implements AutoCloseable {

  private static final int LEAST_THREADS = 4;

  /** So many threads tell whoever comes while the others are at work to come again. */
  private static final int SPARE_THREADS = 16;

  private final Settings settings;
  private final Environment environment;
  private final Metrics metrics = new Metrics();
  private final Semaphore atWork;
  private final Connections connections;
  private final Guard guard;
  private final Site site;
  private final Javalin javalin;

  private Service(Settings settings, Environment environment, Site site) {
    this.settings = settings;
    this.environment = environment.through(new Gate(settings.limits()));
    this.site = site;
    this.atWork = new Semaphore(Math.max(1, settings.limits().threads() - SPARE_THREADS));
    this.connections = new Connections(settings);
    this.javalin = javalin();
    this.guard = new Guard(settings, this.environment, javalin::port);
  }

  /**
   * Starts a service, which answers from then on.
   *
   * @throws RuntimeException if it cannot listen where it should
   */
  public static Service start(Settings settings, Environment environment, Site site) {
    if (!settings.usersNeeded()) {
      environment.store().change(ledger -> People.of(ledger).local(environment.clock().instant()));
    }
    Service service = new Service(settings, environment, site);
    service.javalin.start();
    return service;
  }

  /**
   * Loads what any service is made of. Doing so beside the opening of the record makes a start
   * shorter by a quarter; without it, it is loaded when the service is made.
   */
  public static void load() {
    new Metrics().text();
    Javalin.create(config -> config.startup.showJavalinBanner = false);
  }

  /** The port it listens on. */
  public int port() {
    return javalin.port();
  }

  /** Takes no more requests, finishes those it took, and stops. */
  @Override
  public void close() {
    javalin.stop();
  }

  static List<Route> routes(Settings settings, Metrics metrics) {
    return Stream.of(
            new BookRoutes(metrics).all(),
            new AccessRoutes(settings).all(),
            FemaleRoutes.all(),
            CycleRoutes.all(),
            CalendarRoutes.all(),
            LaboratoryRoutes.all(),
            FhirRoutes.all(),
            ObservationRoutes.all(),
            SentRoutes.all(),
            AdviceRoutes.all())
        .flatMap(List::stream)
        .toList();
  }

  private Javalin javalin() {
    Settings.Limits limits = settings.limits();
    QueuedThreadPool threads = new QueuedThreadPool(limits.threads(), LEAST_THREADS);
    threads.setName("tiderule-http");
    return Javalin.create(
        config -> {
          config.startup.showJavalinBanner = false;
          config.startup.showOldJavalinVersionWarning = false;
          config.startup.startupWatcherEnabled = false;
          config.http.prefer405over404 = true;
          config.http.generateEtags = false;
          config.jetty.threadPool = threads;
          config.jetty.modifyServer(this::limit);
          config.jetty.addConnector(this::connector);
          List<Route> all =
              Stream.of(routes(settings, metrics), site.routes()).flatMap(List::stream).toList();
          for (Route route : all) {
            config.routes.addHttpHandler(
                HandlerType.findOrCreate(route.method().name()),
                route.path(),
                context -> answer(context, route));
          }
          config.routes.exception(HttpResponseException.class, this::unrouted);
          config.routes.exception(
              Exception.class, (fault, context) -> send(context, faulty(fault)));
        });
  }

  private void limit(Server server) {
    server.insertHandler(new MinimumDataRateHandler(settings.limits().leastBytesPerSecond(), 0));
    server.insertHandler(new GracefulHandler());
    server.insertHandler(connections);
    server.setStopTimeout(settings.limits().stop().toMillis());
    server.setErrorHandler(Service::unreadable);
    server.addBean(new NetworkConnectionLimit(settings.limits().connections(), server));
  }

  /** Answers what is no request at all, in the words of any other refusal. */
  private static boolean unreadable(Request request, Response response, Callback callback) {
    byte[] body =
        Refusal.query("It is no request that can be read.").json().getBytes(StandardCharsets.UTF_8);
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, Refusal.CONTENT_TYPE);
    response.write(true, ByteBuffer.wrap(body), callback);
    return true;
  }

  private ServerConnector connector(Server server, HttpConfiguration http) {
    Settings.Limits limits = settings.limits();
    http.setSendServerVersion(false);
    ServerConnector connector = new ServerConnector(server, new HttpConnectionFactory(http));
    connector.setHost(settings.bind().getHostAddress());
    connector.setPort(settings.port());
    connector.setIdleTimeout(limits.idle().toMillis());
    connector.addBean(connections, false);
    return connector;
  }

  private void answer(Context context, Route route) {
    long from = System.nanoTime();
    metrics.begun();
    Caller caller = Caller.unknown(context.ip());
    boolean admitted = atWork.tryAcquire();
    try {
      if (!admitted && !route.path().equals(BookRoutes.HEALTH)) {
        throw Refusal.busy();
      }
      if (route.isPage()) {
        guard.protectPage(context);
      } else {
        guard.protect(context);
      }
      caller = guard.admit(context, route);
      send(context, route.action().answer(call(context, caller)));
    } catch (Refusal e) {
      refuse(context, e, route.isPage() ? caller : null);
    } catch (RuntimeException | StackOverflowError e) {
      refuse(context, faulty(e), route.isPage() ? caller : null);
    } finally {
      if (admitted) {
        atWork.release();
      }
      metrics.ended(
          route.method().name(), route.path(), context.statusCode(), System.nanoTime() - from);
    }
  }

  private Call call(Context context, Caller caller) {
    return new Call(context, environment, caller, settings.behindTls());
  }

  /**
   * Answers a refusal.
   *
   * @param person who sees it on a page; absent where a program asked
   */
  private void refuse(Context context, Refusal refusal, @Nullable Caller person) {
    if (person == null) {
      send(context, refusal);
      return;
    }
    try {
      Answer answer = site.refused(call(context, person), refusal);
      refusal.headers().forEach(context::header);
      send(context, answer);
    } catch (RuntimeException e) {
      send(context, e instanceof Refusal plainly ? plainly : faulty(e));
    }
  }

  private static void send(Context context, Answer answer) {
    context.status(answer.status());
    header(context, "Location", answer.location());
    header(context, "ETag", answer.tag());
    if (answer.body() != null) {
      context.contentType(answer.type()).result(answer.body());
    } else if (answer.file() != null) {
      context.contentType(answer.type()).result(answer.file());
    }
  }

  private static void header(Context context, String name, @Nullable String value) {
    if (value != null) {
      context.header(name, value);
    }
  }

  private static void send(Context context, Refusal refusal) {
    refusal.headers().forEach(context::header);
    context.status(refusal.status()).contentType(Refusal.CONTENT_TYPE).result(refusal.json());
  }

  private Refusal faulty(Throwable fault) {
    boolean ours = !(fault instanceof Unavailable);
    String words = ours ? "A fault of ours: " + fault : "The record: " + fault.getMessage();
    environment.faults().accept(words.replaceAll("\\s+", " "));
    return ours ? Refusal.fault() : Refusal.unavailable();
  }

  private void unrouted(HttpResponseException exception, Context context) {
    guard.protect(context);
    Refusal refusal =
        exception.getStatus() == 405
            ? Refusal.method(String.join(", ", exception.getDetails().values()))
            : Refusal.notFound();
    metrics.missed(context.method().name(), refusal.status());
    String accept = context.header("Accept");
    boolean toPeople =
        !context.path().startsWith("/v1/") && accept != null && accept.contains("text/html");
    if (toPeople) {
      guard.protectPage(context);
    }
    refuse(context, refusal, toPeople ? Caller.unknown(context.ip()) : null);
  }
}
