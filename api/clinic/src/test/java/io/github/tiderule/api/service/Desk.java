package io.github.tiderule.api.service;

import io.github.tiderule.api.access.Attempts;
import io.github.tiderule.api.access.Passwords;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.access.Tokens;
import io.github.tiderule.api.page.Pages;
import io.github.tiderule.api.record.store.Address;
import io.github.tiderule.api.record.store.Store;
import io.github.tiderule.api.service.http.Environment;
import io.github.tiderule.api.service.http.Settings;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import java.util.stream.Stream;

/** A service that runs for a test, with a clock that stands until it is moved. */
public final class Desk implements AutoCloseable {

  static final Tiderule TIDERULE = Tiderule.create();
  public static final Instant START = Instant.parse("2027-01-13T12:00:00Z");
  public static final String PASSWORD = "one of three red kites";
  static final Settings.Limits LIMITS = Settings.Limits.usual(2);

  private static final Passwords PASSWORDS = new Passwords();
  private static final String HASH = PASSWORDS.hash(PASSWORD);

  /** A clock that is moved by hand. */
  public static final class HandClock extends Clock {
    private volatile Instant now = START;

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }

    public void move(Duration by) {
      now = now.plus(by);
    }
  }

  public final HandClock clock = new HandClock();
  public final List<String> faults = new CopyOnWriteArrayList<>();
  public final Store store;
  public final Service service;
  private final Path directory;

  private Desk(
      Address address,
      boolean users,
      Settings.Limits limits,
      Function<CycleRecord, Advice> advise,
      Function<CycleRecord, Reasoning> reason) {
    store = Store.open(address);
    directory = Objects.requireNonNull(Path.of(address.words()).getParent());
    Settings settings = new Settings(InetAddress.getLoopbackAddress(), 0, users, false, limits);
    service =
        Service.start(
            settings,
            new Environment(
                store,
                advise,
                reason,
                TIDERULE::rules,
                clock,
                PASSWORDS,
                new Attempts(),
                faults::add),
            Pages.site());
  }

  private static Address fresh() {
    try {
      return Address.of(Files.createTempDirectory("tiderule-desk").toString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** One for whoever uses the machine. */
  public static Desk open() {
    return new Desk(fresh(), false, LIMITS, TIDERULE::advise, TIDERULE::reason);
  }

  /** One people sign in at. */
  public static Desk withUsers() {
    return new Desk(fresh(), true, LIMITS, TIDERULE::advise, TIDERULE::reason);
  }

  /** One with an engine and limits of the test's own. */
  static Desk limited(Settings.Limits limits, Function<CycleRecord, Advice> advise) {
    return new Desk(fresh(), false, limits, advise, cycle -> Reasoning.of(advise.apply(cycle)));
  }

  /** Asks as nobody, or as whoever uses the machine. */
  Asker asker() {
    return new Asker(service.port(), Map.of());
  }

  /** Adds a user who signs in with {@link #PASSWORD}. */
  public void add(String name, Role role) {
    store.change(ledger -> People.of(ledger).add(name, role, HASH, clock.instant()));
  }

  /** A token of a user, who is added when not there. */
  public String token(String name, Role role) {
    return store.change(
        ledger -> {
          People people = People.of(ledger);
          Person person =
              people.named(name).orElseGet(() -> people.add(name, role, HASH, clock.instant()));
          return Tokens.of(ledger).issue(person, "test", clock.instant()).secret();
        });
  }

  /** Asks as a user, with a token; the user is added when not there. */
  Asker asker(String name, Role role) {
    return new Asker(service.port(), Map.of("Authorization", "Bearer " + token(name, role)));
  }

  @Override
  public void close() {
    service.close();
    store.close();
    try (Stream<Path> files = Files.walk(directory)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
