package io.github.tiderule.api.command;

import io.github.tiderule.api.service.http.Settings;
import java.nio.file.Path;
import java.util.List;
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

  static final String BEGIN = "begin";
  static final String ENTER = "enter";
  static final String PLAN = "plan";

  /** What the commands of FHIR are called on the record, where other words are taken. */
  static final String TAKE = "fhir import";

  static final String BUNDLE = "fhir export";

  static final String ON = "--on";
  static final String ESTIMATED = "--estimated";
  static final String ZONE = "--zone";
  static final String NEW = "--new";
  static final String AT = "--at";
  static final String METHOD = "--method";
  static final String LABORATORY = "--laboratory";

  /** Stands in the place of a unit that is not known yet. */
  static final String NO_UNIT = "?";

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
    top.addSubcommand(BEGIN, begin())
        .addSubcommand(ENTER, enter())
        .addSubcommand(PLAN, plan())
        .addSubcommand(SERVE, serve())
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

  private static CommandSpec begin() {
    return onRecord(BEGIN, "Begins a season of a female of the record.")
        .addOption(text(ON, "DATE", "First blood, as in 2027-01-03; leave it out if not known."))
        .addOption(flag(ESTIMATED, "That day is an estimate."))
        .addOption(text(ZONE, "ZONE", "Where she is, as in Europe/Vienna; else as before."))
        .addOption(flag(NEW, "She is not in the record yet; add her."))
        .addOption(user("The user whose female she is."))
        .addPositional(her());
  }

  private static CommandSpec enter() {
    return answer(onRecord(ENTER, "Enters a result of her season, and prints the plan."))
        .addOption(
            text(
                AT,
                "TIME",
                "When it was drawn or seen, by her clock, as in 2027-01-12T08:00; else now."))
        .addOption(text(METHOD, "METHOD", "How the laboratory measures, as in clia."))
        .addOption(text(LABORATORY, "NAME", "The laboratory."))
        .addPositional(her())
        .addPositional(
            PositionalParamSpec.builder()
                .type(List.class)
                .auxiliaryTypes(String.class)
                .index("1..*")
                .arity("1..*")
                .paramLabel("RESULT")
                .description(
                    "As in 4.6 ng/mL, or lh positive, smear 80, sign stands, temperature 37.1.",
                    NO_UNIT + " in place of a unit says that it is not known yet.")
                .build());
  }

  private static CommandSpec plan() {
    return answer(onRecord(PLAN, "Prints the answer for her season now.")).addPositional(her());
  }

  private static CommandSpec answer(CommandSpec spec) {
    return spec.addOption(flag(Specs.FULL, "Print everything: reasons, other ways, cautions."))
        .addOption(flag(Specs.JSON, "Print the answer as JSON, schema tiderule/advice/1."))
        .addOption(user("The user whose female she is."));
  }

  private static PositionalParamSpec her() {
    return positional("0", "1", "NAME", "What she is called in the record.");
  }

  private static OptionSpec flag(String name, String description) {
    return OptionSpec.builder(name).type(boolean.class).description(description).build();
  }

  private static OptionSpec text(String name, String label, String description) {
    return OptionSpec.builder(name)
        .type(String.class)
        .paramLabel(label)
        .description(description)
        .build();
  }

  /** Says that females of the record are meant, and adds what that needs. */
  static CommandSpec orOfRecord(CommandSpec spec, String description) {
    return spec.addOption(flag(Specs.RECORD, description))
        .addOption(data())
        .addOption(user("With --record: the user whose females they are."));
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
                .type(boolean[].class)
                .arity("0")
                .description(
                    "A server in front of it speaks TLS and sets X-Forwarded-For.",
                    "It needs users, unless said twice: then that server lets in you alone.")
                .build());
  }

  /** How often it was said that a server in front speaks TLS. */
  static int behindTls(ParseResult parsed) {
    return parsed.matchedOptionValue(BEHIND_TLS, new boolean[0]).length;
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
