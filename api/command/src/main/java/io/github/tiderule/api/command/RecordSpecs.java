package io.github.tiderule.api.command;

import io.github.tiderule.api.service.http.Settings;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** What the commands on the record are called, and what they take. */
final class RecordSpecs {

  static final String SERVE = "serve";
  static final String BACKUP = "backup";
  static final String RESTORE = "restore";
  static final String EXPORT = "export";
  static final String IMPORT = "import";
  static final String USERS = "users";

  static final String DATA = "--data";
  static final String PORT = "--port";
  static final String BIND = "--bind";
  static final String BEHIND_TLS = "--behind-tls";
  static final String USER = "--user";
  static final String ROLE = "--role";
  static final String TAKES_OVER = "--takes-over";

  private static final String DATA_VARIABLE = "TIDERULE_DATA";

  private RecordSpecs() {}

  static void addTo(CommandSpec top) {
    top.addSubcommand(SERVE, serve())
        .addSubcommand(
            BACKUP,
            onRecord(BACKUP, "Writes the whole record into one new file; it can be in use.")
                .addPositional(positional("0", "1", "FILE", "The file to write.")))
        .addSubcommand(
            RESTORE,
            onRecord(RESTORE, "Fills an empty record from a backup.")
                .addPositional(positional("0", "1", "FILE", "The backup.")))
        .addSubcommand(
            EXPORT,
            onRecord(EXPORT, "Prints every season as a cycle file, one a line.")
                .addOption(user("Only the females of this user.")))
        .addSubcommand(
            IMPORT,
            onRecord(IMPORT, "Takes cycle files into the record, one a line.")
                .addOption(user("The user whose females they are."))
                .addPositional(
                    positional("0", "0..1", "FILE", "Cycle files; - reads the standard input.")))
        .addSubcommand(USERS, users());
  }

  private static CommandSpec serve() {
    return onRecord(SERVE, "Answers over HTTP, on this machine unless told otherwise.")
        .addOption(
            OptionSpec.builder(PORT)
                .type(Integer.class)
                .paramLabel("PORT")
                .description("Port to listen on; " + Settings.USUAL_PORT + " unless given.")
                .build())
        .addOption(
            OptionSpec.builder(BIND)
                .type(String.class)
                .paramLabel("ADDRESS")
                .description(
                    "Address to listen on; 127.0.0.1 unless given.",
                    "Any other than this machine's own needs users.")
                .build())
        .addOption(
            OptionSpec.builder(BEHIND_TLS)
                .type(boolean.class)
                .description("A server in front of it speaks TLS and sets X-Forwarded-For.")
                .build());
  }

  private static CommandSpec users() {
    return onRecord(USERS, "Says who may use the record. Passwords are read, not given here.")
        .addOption(
            OptionSpec.builder(ROLE)
                .type(String.class)
                .paramLabel("ROLE")
                .description("keeper, vet or reader; for add.")
                .build())
        .addOption(
            OptionSpec.builder(TAKES_OVER)
                .type(boolean.class)
                .description("Hands over what was kept before there were users; for add.")
                .build())
        .addPositional(positional("0", "1", "ACTION", "list, add, password, close or open."))
        .addPositional(positional("1", "0..1", "NAME", "The user's name."));
  }

  static OptionSpec user(String description) {
    return OptionSpec.builder(USER)
        .type(String.class)
        .paramLabel("NAME")
        .description(description)
        .build();
  }

  private static CommandSpec onRecord(String name, String description) {
    return Specs.command(name, description).addOption(data());
  }

  /** Says where the record is. */
  static OptionSpec data() {
    return OptionSpec.builder(DATA)
        .type(String.class)
        .paramLabel("DIR")
        .description(
            "Where the record is: a directory, or a jdbc:postgresql: address.",
            "Otherwise " + DATA_VARIABLE + " says it, or it is ~/.tiderule.")
        .build();
  }

  private static PositionalParamSpec positional(
      String index, String arity, String label, String description) {
    return PositionalParamSpec.builder()
        .type(String.class)
        .index(index)
        .arity(arity)
        .paramLabel(label)
        .description(description)
        .build();
  }

  /** Where the record is. */
  static String data(ParseResult parsed) {
    String variable = System.getenv(DATA_VARIABLE);
    String usual =
        variable == null || variable.isBlank()
            ? Path.of(System.getProperty("user.home"), ".tiderule").toString()
            : variable;
    return parsed.matchedOptionValue(DATA, usual);
  }
}
