package io.github.tiderule.api.command;

import io.github.tiderule.api.access.Passwords;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.InputLines;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.store.Store;
import java.io.Console;
import java.io.FileInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import picocli.CommandLine.ParseResult;

/** {@code users}: who may use the record. */
final class UsersCommand {

  private static final List<String> ACTIONS = List.of("list", "add", "password", "close", "open");
  private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._@-]{0,63}");
  private static final int MOST_PASSWORD_BYTES = 4 * Passwords.LONGEST;

  private final Streams streams;

  UsersCommand(Streams streams) {
    this.streams = streams;
  }

  /**
   * @throws IOException if the password cannot be read or the list not written
   */
  int run(Store store, ParseResult parsed, Instant now) throws IOException {
    String action = parsed.matchedPositionalValue(0, "");
    if (!ACTIONS.contains(action)) {
      throw new RecordCommands.Unusable(
          "There is no users " + action + "; it can be " + String.join(", ", ACTIONS) + ".");
    }
    if (action.equals("list")) {
      return list(store);
    }
    String name = parsed.matchedPositionalValue(1, "");
    if (!NAME.matcher(name).matches()) {
      throw new RecordCommands.Unusable(
          "A user's name is 1 to 64 letters, digits, dots, hyphens, underscores or @, not \""
              + name
              + "\".");
    }
    if (action.equals("add")) {
      return add(store, name, parsed, now);
    }
    Person person =
        store
            .read(ledger -> People.of(ledger).named(name))
            .orElseThrow(() -> new RecordCommands.Unusable("There is no user \"" + name + "\"."));
    switch (action) {
      case "password" -> {
        String hash = new Passwords().hash(password(name));
        store.change(change(people -> people.setPassword(person, hash)));
      }
      case "close" -> store.change(change(people -> people.close(person, now)));
      default -> store.change(change(people -> people.close(person, null)));
    }
    return done("Done. The sessions of " + name + " are over.");
  }

  private interface PeopleChange {
    void run(People people);
  }

  private static Function<Ledger, Boolean> change(PeopleChange change) {
    return ledger -> {
      change.run(People.of(ledger));
      return true;
    };
  }

  private int list(Store store) throws IOException {
    StringBuilder lines = new StringBuilder();
    for (Person person : store.read(ledger -> People.of(ledger).all())) {
      lines
          .append(person.name())
          .append('\t')
          .append(person.role().word())
          .append(person.closedAt() == null ? "" : "\tclosed")
          .append('\n');
    }
    new Output(streams.out()).print(lines.toString());
    return ExitStatus.DONE;
  }

  private int add(Store store, String name, ParseResult parsed, Instant now) throws IOException {
    String word = parsed.matchedOptionValue(RecordSpecs.ROLE, "");
    Role role =
        Arrays.stream(Role.values())
            .filter(one -> one.word().equals(word.toLowerCase(Locale.ROOT)))
            .findFirst()
            .orElseThrow(
                () ->
                    new RecordCommands.Unusable(
                        "Say with " + RecordSpecs.ROLE + " keeper, vet or reader."));
    boolean takesOver = parsed.hasMatchedOption(RecordSpecs.TAKES_OVER);
    if (takesOver && role == Role.READER) {
      throw new RecordCommands.Unusable("A reader has no females, and can take none over.");
    }
    String hash = new Passwords().hash(password(name));
    int taken =
        store.change(
            ledger -> {
              Person person = People.of(ledger).add(name, role, hash, now);
              return takesOver ? ledger.females().handOver(Person.LOCAL, person.key()) : 0;
            });
    return done(
        name
            + " may use the record as "
            + role.word()
            + (takesOver ? " and has " + taken + " females from before" : "")
            + ". A service that runs must be started anew to ask for passwords.");
  }

  private int done(String words) throws IOException {
    new Output(streams.err()).print(words + "\n");
    return ExitStatus.DONE;
  }

  @SuppressWarnings("SystemConsoleNull")
  private String password(String name) throws IOException {
    // newer Javas have a console even where there is no terminal; it then reads what we would
    Console console = streams.in() instanceof FileInputStream ? System.console() : null;
    if (console != null) {
      char[] typed = console.readPassword("Password for %s: ", name);
      if (typed == null) {
        throw new RecordCommands.Unusable("There is no password to read.");
      }
      return new String(typed);
    }
    byte[] line = new InputLines(streams.in(), MOST_PASSWORD_BYTES).next();
    return Optional.ofNullable(line)
        .map(bytes -> new String(bytes, StandardCharsets.UTF_8).stripTrailing())
        .orElseThrow(() -> new RecordCommands.Unusable("There is no password to read."));
  }
}
