package io.github.tiderule.api.command;

import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Fault;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.InputLines;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.record.store.Address;
import io.github.tiderule.api.record.store.Backup;
import io.github.tiderule.api.record.store.BackupFile;
import io.github.tiderule.api.record.store.Store;
import io.github.tiderule.api.record.store.Transfer;
import io.github.tiderule.api.record.store.Unavailable;
import io.github.tiderule.api.record.store.UnfitRecord;
import io.github.tiderule.api.report.RefusalReport;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.format.cycle.CycleFile;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ParseResult;

/** The commands on the record: which one, and where the record is. */
final class RecordCommands {

  /** Something is not as the command needs it; the message is for people. */
  static final class Unusable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Unusable(String message) {
      super(message);
    }
  }

  private final Streams streams;
  private final Supplier<Engine> engine;

  RecordCommands(Streams streams, Supplier<Engine> engine) {
    this.streams = streams;
    this.engine = engine;
  }

  /**
   * @throws IOException if what it prints cannot be written
   */
  int run(String command, ParseResult parsed) throws IOException {
    return switch (command) {
      case RecordSpecs.SERVE ->
          told(() -> new ServeCommand(streams, engine).run(address(parsed), parsed));
      case RecordSpecs.RESTORE ->
          told(() -> restore(Path.of(parsed.matchedPositionalValue(0, "")), address(parsed)));
      case RecordSpecs.BACKUP, RecordSpecs.EXPORT ->
          told(
              () -> {
                mustBeThere(address(parsed));
                return on(parsed, (store, address) -> run(command, parsed, store, address));
              });
      default -> on(parsed, (store, address) -> run(command, parsed, store, address));
    };
  }

  /** Something done on an open record. */
  private interface Work {
    int done(Store store, Address address) throws IOException;
  }

  /** Something done that may be refused. */
  private interface Deed {
    int done() throws IOException;
  }

  private static Address address(ParseResult parsed) {
    return Address.of(RecordSpecs.data(parsed));
  }

  private int on(ParseResult parsed, Work work) throws IOException {
    return told(
        () -> {
          Address address = address(parsed);
          try (Store store = open(address)) {
            return work.done(store, address);
          }
        });
  }

  private int told(Deed deed) throws IOException {
    try {
      return deed.done();
    } catch (Unusable | IllegalArgumentException e) {
      new Output(streams.err()).print(e.getMessage() + "\n");
      return ExitStatus.REFUSED;
    } catch (Refusal e) {
      new Output(streams.err())
          .print(
              e.problems().isEmpty()
                  ? e.detail() + "\n"
                  : RefusalReport.text("The record", e.problems()));
      return ExitStatus.REFUSED;
    } catch (UncheckedIOException e) {
      throw e.getCause();
    } catch (Unavailable e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  /** What gives the record out must not make an empty one where there is none. */
  private static void mustBeThere(Address address) {
    Path file = address.file();
    if (file != null && !Files.exists(file)) {
      throw new Unusable("There is no record at " + address.words() + ".");
    }
  }

  /** The backup is opened first, so that one that is refused leaves no record behind. */
  private int restore(Path file, Address address) throws IOException {
    try (BackupFile backup = BackupFile.open(file);
        Store store = open(address)) {
      int rows = Backup.restore(backup, store);
      return done("The record at " + address.words() + " has " + rows + " rows from " + file + ".");
    }
  }

  /**
   * @throws Unusable if it cannot be opened
   */
  static Store open(Address address) {
    try {
      return Store.open(address);
    } catch (UnfitRecord e) {
      throw new Unusable(
          "The record at " + address.words() + " cannot be opened: it " + e.getMessage() + ".");
    } catch (RuntimeException e) {
      Throwable first = e;
      while (first.getCause() != null) {
        first = first.getCause();
      }
      throw new Unusable(
          "The record at " + address.words() + " cannot be opened: " + Fault.words(first) + ".");
    }
  }

  private int run(String command, ParseResult parsed, Store store, Address address)
      throws IOException {
    Instant now = Instant.now().truncatedTo(ChronoUnit.MILLIS);
    return switch (command) {
      case RecordSpecs.BACKUP -> {
        Path file = Path.of(parsed.matchedPositionalValue(0, ""));
        Backup.write(store, file);
        yield done("The record at " + address.words() + " is now also in " + file + ".");
      }
      case RecordSpecs.EXPORT -> export(store, parsed);
      case RecordSpecs.IMPORT -> takeIn(store, parsed, now);
      case Specs.ACCURACY ->
          new AccuracyCommand(streams, engine, parsed.hasMatchedOption(Specs.JSON))
              .run(store, user(store, parsed), now);
      case RecordSpecs.BEGIN -> females(store, parsed, now).begin(name(parsed), parsed);
      case RecordSpecs.ENTER ->
          females(store, parsed, now)
              .enter(name(parsed), parsed.matchedPositionalValue(1, List.of()), parsed);
      case RecordSpecs.PLAN -> females(store, parsed, now).plan(name(parsed), parsed);
      case ExchangeSpecs.LABORATORY -> females(store, parsed, now).laboratory(parsed);
      case RecordSpecs.TAKE -> females(store, parsed, now).take(parsed);
      case RecordSpecs.BUNDLE -> females(store, parsed, now).bundle(name(parsed));
      case RecordSpecs.USERS -> new UsersCommand(streams).run(store, parsed, now);
      default -> throw new IllegalStateException("no such command: " + command);
    };
  }

  private int done(String words) throws IOException {
    new Output(streams.err()).print(words + "\n");
    return ExitStatus.DONE;
  }

  private static @Nullable Person user(Store store, ParseResult parsed) {
    if (!parsed.hasMatchedOption(RecordSpecs.USER)) {
      return null;
    }
    String name = parsed.matchedOptionValue(RecordSpecs.USER, "");
    return store
        .read(ledger -> People.of(ledger).named(name))
        .orElseThrow(() -> new Unusable("There is no user \"" + name + "\"."));
  }

  private int export(Store store, ParseResult parsed) throws IOException {
    Person user = user(store, parsed);
    OutputStream out = new BufferedOutputStream(streams.out());
    int without =
        Transfer.export(
            store,
            user == null ? null : user.key(),
            line -> {
              try {
                out.write((line + "\n").getBytes(StandardCharsets.UTF_8));
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
    out.flush();
    return without == 0
        ? ExitStatus.DONE
        : done(without + " without a season are in no cycle file; a backup has them.");
  }

  private static String name(ParseResult parsed) {
    return parsed.matchedPositionalValue(0, "");
  }

  private FemaleCommands females(Store store, ParseResult parsed, Instant now) {
    return new FemaleCommands(streams, engine, store, owner(store, parsed, now), now);
  }

  /** Whose females are meant. */
  private static Person owner(Store store, ParseResult parsed, Instant now) {
    Person user = user(store, parsed);
    if (user == null && !store.read(ledger -> People.of(ledger).all()).isEmpty()) {
      throw new Unusable("Say with " + RecordSpecs.USER + " whose females they are.");
    }
    return user == null ? store.change(ledger -> People.of(ledger).local(now)) : user;
  }

  /**
   * Shares the services of a stud among females of the record.
   *
   * @throws IOException if what it prints cannot be written
   */
  int stud(ParseResult parsed, List<String> names, List<Instant> services) throws IOException {
    return on(
        parsed,
        (store, address) ->
            females(store, parsed, Instant.now().truncatedTo(ChronoUnit.MILLIS))
                .stud(names, services, parsed.hasMatchedOption(Specs.JSON)));
  }

  private int takeIn(Store store, ParseResult parsed, Instant now) throws IOException {
    Given file = new Given(parsed.matchedPositionalValue(0, Given.STANDARD_INPUT));
    Person owner = owner(store, parsed, now);
    try (InputStream in = file.open(streams)) {
      return takeIn(store, owner, new InputLines(in, CycleFile.MOST_BYTES), now);
    } catch (Given.Unreadable e) {
      throw new Unusable(file.words() + " cannot be read.");
    }
  }

  private int takeIn(Store store, Person owner, InputLines lines, Instant now) throws IOException {
    int number = 0;
    int added = 0;
    int there = 0;
    int refused = 0;
    for (byte[] line = lines.next(); line != null; line = lines.next()) {
      number++;
      if (new String(line, StandardCharsets.UTF_8).isBlank()) {
        continue;
      }
      Transfer.Outcome outcome = Transfer.take(store, owner.key(), line, now);
      if (outcome instanceof Transfer.Outcome.Refused bad) {
        refused++;
        new Output(streams.err()).print(RefusalReport.text("line " + number, bad.problems()));
      } else if (outcome instanceof Transfer.Outcome.There same) {
        there++;
        tell(number, same.differing());
      } else if (outcome instanceof Transfer.Outcome.Added more) {
        added++;
        tell(number, more.differing());
      }
    }
    done(
        String.join(
                ", ", List.of(added + " taken in", there + " there already", refused + " refused"))
            + ".");
    return refused == 0 ? ExitStatus.DONE : ExitStatus.SOME_REFUSED;
  }

  /** Nothing on file is overwritten by an import; so a person must know what it says otherwise. */
  private void tell(int line, List<String> differing) throws IOException {
    if (!differing.isEmpty()) {
      new Output(streams.err())
          .print(
              "line "
                  + line
                  + ": the record does not say the same at "
                  + String.join(", ", differing)
                  + ", and stays as it is.\n");
    }
  }
}
