package io.github.tiderule.api.command;

import io.github.tiderule.api.access.Attempts;
import io.github.tiderule.api.access.Passwords;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.page.Pages;
import io.github.tiderule.api.record.store.Address;
import io.github.tiderule.api.record.store.Store;
import io.github.tiderule.api.service.Service;
import io.github.tiderule.api.service.http.Environment;
import io.github.tiderule.api.service.http.Settings;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Clock;
import java.util.concurrent.CountDownLatch;
import java.util.function.Supplier;
import picocli.CommandLine.ParseResult;

/** {@code serve}: answers over HTTP until the process is told to stop. */
final class ServeCommand {

  private static final int HIGHEST_PORT = 65535;

  private final Streams streams;
  private final Supplier<Engine> engine;

  ServeCommand(Streams streams, Supplier<Engine> engine) {
    this.streams = streams;
    this.engine = engine;
  }

  /**
   * @throws IOException if the first lines cannot be written
   * @throws RecordCommands.Unusable if it cannot serve like that
   */
  int run(Address address, ParseResult parsed) throws IOException {
    InetAddress bind = bind(parsed.matchedOptionValue(RecordSpecs.BIND, "127.0.0.1"));
    int port = parsed.matchedOptionValue(RecordSpecs.PORT, Settings.USUAL_PORT);
    if (!(port >= 0 && port <= HIGHEST_PORT)) {
      throw new RecordCommands.Unusable("There is no port " + port + ".");
    }
    new Thread(Service::load, "tiderule-load").start();
    Store store = RecordCommands.open(address);
    boolean hasUsers = !store.read(ledger -> People.of(ledger).all()).isEmpty();
    if (!hasUsers && !bind.isLoopbackAddress()) {
      store.close();
      throw new RecordCommands.Unusable(
          "On "
              + bind.getHostAddress()
              + " others can reach it, so it needs users: tiderule users add NAME --role keeper");
    }
    int behindTls = RecordSpecs.behindTls(parsed);
    if (!hasUsers && behindTls == 1) {
      store.close();
      throw new RecordCommands.Unusable(
          "Behind another server others can reach it, so it needs users: tiderule users add NAME"
              + " --role keeper. Where that server lets in nobody but you, say "
              + RecordSpecs.BEHIND_TLS
              + " twice.");
    }
    Settings settings =
        new Settings(
            bind,
            port,
            hasUsers,
            behindTls > 0,
            Settings.Limits.usual(Runtime.getRuntime().availableProcessors()));
    Service service = started(settings, store);
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  service.close();
                  store.close();
                  stopped.countDown();
                },
                "tiderule-stop"));
    String rules = engine.get().rules().fingerprint();
    new Output(streams.out()).print(words(settings, service.port(), address, rules));
    try {
      stopped.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return ExitStatus.DONE;
  }

  private static InetAddress bind(String text) {
    try {
      return InetAddress.getByName(text);
    } catch (UnknownHostException e) {
      throw new RecordCommands.Unusable("There is no address " + text + ".");
    }
  }

  private Service started(Settings settings, Store store) {
    // the engine is being made meanwhile, and is only needed for the first answer
    Environment environment =
        new Environment(
            store,
            cycle -> engine.get().advise().apply(cycle),
            cycle -> engine.get().reason().apply(cycle),
            () -> engine.get().rules(),
            Clock.systemUTC(),
            new Passwords(),
            new Attempts(),
            this::tell);
    try {
      return Service.start(settings, environment, Pages.site());
    } catch (RuntimeException e) {
      store.close();
      for (Throwable cause = e; cause != null; cause = cause.getCause()) {
        if (cause instanceof BindException) {
          throw new RecordCommands.Unusable(
              "Port "
                  + settings.port()
                  + " on "
                  + settings.bind().getHostAddress()
                  + " is not to be had: "
                  + cause.getMessage()
                  + ". Maybe it is serving already?");
        }
      }
      throw e;
    }
  }

  private void tell(String fault) {
    try {
      new Output(streams.err()).print(fault + "\n");
    } catch (IOException e) {
      // nobody is left to tell
    }
  }

  private static String words(Settings settings, int port, Address address, String rules) {
    String host = settings.bind().getHostAddress();
    String name = host.contains(":") ? "[" + host + "]" : host;
    return "Tiderule answers on http://"
        + name
        + ":"
        + port
        + "; open that in a browser.\nWhat programs can ask is at /v1/openapi.\nThe record is at "
        + address.words()
        + (settings.usersNeeded() ? "; people sign in." : ", for whoever uses this machine.")
        + "\nIt speaks from the rules "
        + rules
        + ".\n";
  }
}
