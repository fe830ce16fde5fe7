package io.github.tiderule.api.command;

import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** What each command is called, and what it takes; spelt out, since looking it up costs time. */
final class Specs {

  static final String ADVISE = "advise";
  static final String TRACE = "trace";
  static final String BATCH = "batch";
  static final String CHANGES = "changes";
  static final String STUD = "stud";
  static final String ACCURACY = "accuracy";
  static final String RULEBOOK = "rulebook";
  static final String JSON = "--json";
  static final String FULL = "--full";
  static final String AS_OF = "--as-of";
  static final String RECORD = "--record";
  static final String SINCE = "--since";
  static final String SERVICES = "--services";
  static final String LINES = "--lines";
  static final String FORMAT = "--format";
  static final String PROTOCOL = "--protocol";
  static final String RULE = "--rule";
  static final String CURVE = "--curve";
  static final String SHEET = "--sheet";
  static final String DAY_SHEET = "--day-sheet";
  static final String SUMMARY = "--summary";
  static final String PAPER = "--paper";

  private Specs() {}

  /**
   * Everything there is.
   *
   * @param arguments where one of the commands on a file is asked for, no others are spelt out
   */
  static CommandSpec top(String... arguments) {
    CommandSpec top =
        command("tiderule", "On which day do we breed her? Observations in, a reasoned plan out.")
            .version("tiderule " + Version.text());
    top.usageMessage()
        .footer(
            "",
            "Exit status: 0 done, 1 a fault of ours, 2 bad usage or a refused file,",
            "3 a batch in which some lines were refused.",
            "Not a substitute for a vet; check your own local rules.");
    top.addSubcommand(ADVISE, advise())
        .addSubcommand(TRACE, trace())
        .addSubcommand(BATCH, batch())
        .addSubcommand(CHANGES, changes())
        .addSubcommand(STUD, stud())
        .addSubcommand(ACCURACY, accuracy())
        .addSubcommand(RULEBOOK, rulebook());
    if (arguments.length == 0 || !top.subcommands().containsKey(arguments[0])) {
      ExchangeSpecs.addTo(top);
      RecordSpecs.addTo(top);
    }
    return top;
  }

  static CommandSpec command(String name, String description) {
    CommandSpec spec = CommandSpec.create().name(name).mixinStandardHelpOptions(true);
    spec.usageMessage().description(description);
    return spec;
  }

  private static CommandSpec advise() {
    return command(ADVISE, "Prints the answer for one cycle file on one screen.")
        .addOption(
            OptionSpec.builder(FULL)
                .type(boolean.class)
                .description("Print everything: reasons, other ways, cautions.")
                .build())
        .addOption(
            OptionSpec.builder(JSON)
                .type(boolean.class)
                .description("Print the answer as JSON, schema tiderule/advice/1.")
                .build())
        .addOption(
            OptionSpec.builder(AS_OF)
                .type(String.class)
                .paramLabel("INSTANT")
                .description(
                    "Advise for this moment instead of the file's own,",
                    "as in 2027-01-12T18:30:00+01:00.")
                .build())
        .addOption(written(CURVE, "Write the curve of the season too, as .svg or as .png."))
        .addOption(written(SHEET, "Write a page for the breeder too, as .pdf."))
        .addOption(written(DAY_SHEET, "Write a page for the day of insemination too, as .pdf."))
        .addOption(paper())
        .addOption(protocol())
        .addPositional(file("1"));
  }

  private static CommandSpec trace() {
    return command(
            TRACE, "Prints the reasoning: every finding, its rule, its sources, what did not fire.")
        .addOption(
            OptionSpec.builder(RULE)
                .type(String.class)
                .paramLabel("ID")
                .description(
                    "Print instead why this rule spoke or kept silent,", "condition by condition.")
                .build())
        .addOption(written(SUMMARY, "Write two to three pages for a vet too, as .pdf."))
        .addOption(paper())
        .addOption(protocol())
        .addPositional(file("1"));
  }

  private static CommandSpec batch() {
    return command(
            BATCH,
            "Reads cycle files one a line, and prints an answer or a refusal for each, in order.")
        .addOption(protocol())
        .addPositional(file("0..1"));
  }

  private static CommandSpec changes() {
    return command(
            CHANGES, "Prints what changed between two cycle files of one season, or in one file.")
        .addOption(
            OptionSpec.builder(JSON)
                .type(boolean.class)
                .description("Print it as JSON, schema tiderule/changes/1.")
                .build())
        .addOption(
            OptionSpec.builder(SINCE)
                .type(String.class)
                .paramLabel("INSTANT")
                .description(
                    "Compare one file with what was known at this moment,",
                    "as in 2027-01-12T18:30:00+01:00.")
                .build())
        .addPositional(
            PositionalParamSpec.builder()
                .type(String.class)
                .index("0")
                .arity("1")
                .paramLabel("BEFORE")
                .description("The earlier cycle file, or the only one with --since.")
                .build())
        .addPositional(
            PositionalParamSpec.builder()
                .type(String.class)
                .index("1")
                .arity("0..1")
                .paramLabel("AFTER")
                .description("The later cycle file; - reads the standard input.")
                .build());
  }

  private static CommandSpec stud() {
    return RecordSpecs.orOfRecord(
            command(STUD, "Shares the services of one stud among several females."),
            "Each FILE is the name of a female of the record.")
        .addOption(
            OptionSpec.builder(SERVICES)
                .type(String.class)
                .required(true)
                .paramLabel("INSTANTS")
                .description(
                    "When the stud can serve, with commas between,",
                    "as in 2027-03-11T10:00+01:00,2027-03-12T10:00+01:00.")
                .build())
        .addOption(
            OptionSpec.builder(LINES)
                .type(boolean.class)
                .description("Each FILE holds cycle files one a line.")
                .build())
        .addOption(
            OptionSpec.builder(JSON)
                .type(boolean.class)
                .description("Print it as JSON, schema tiderule/stud/1.")
                .build())
        .addPositional(
            PositionalParamSpec.builder()
                .type(List.class)
                .auxiliaryTypes(String.class)
                .index("0..*")
                .arity("0..*")
                .paramLabel("FILE")
                .description("A cycle file of each female; - reads the standard input.")
                .build());
  }

  private static CommandSpec accuracy() {
    return command(
            ACCURACY,
            "Reads past seasons one a line, and compares each whelping with its forecast.")
        .addOption(
            OptionSpec.builder(RECORD)
                .type(boolean.class)
                .description("Take the seasons of the record instead.")
                .build())
        .addOption(RecordSpecs.data())
        .addOption(RecordSpecs.user("With --record: only the females of this user."))
        .addOption(
            OptionSpec.builder(JSON)
                .type(boolean.class)
                .description("Print it as JSON, schema tiderule/accuracy/1.")
                .build())
        .addPositional(file("0..1"));
  }

  private static CommandSpec rulebook() {
    List<String> formats = RulebookCommand.FORMATS;
    return command(RULEBOOK, "Prints every rule, parameter and source.")
        .addOption(
            OptionSpec.builder(FORMAT)
                .type(String.class)
                .paramLabel("FORMAT")
                .defaultValue(RulebookCommand.MARKDOWN)
                .completionCandidates(formats)
                .description("One of " + String.join(", ", formats) + ".")
                .build())
        .addOption(protocol());
  }

  private static OptionSpec written(String option, String... description) {
    return OptionSpec.builder(option)
        .type(String.class)
        .paramLabel("FILE")
        .description(description)
        .build();
  }

  private static OptionSpec paper() {
    return OptionSpec.builder(PAPER)
        .type(String.class)
        .paramLabel("PAPER")
        .description("The paper of a .pdf: a4, which it is otherwise, or letter.")
        .build();
  }

  private static OptionSpec protocol() {
    return OptionSpec.builder(PROTOCOL)
        .type(String.class)
        .paramLabel("FILE")
        .description(
            "A clinic's own values of some parameters: a table with",
            "the heading id,value,reason,by,since.")
        .build();
  }

  static PositionalParamSpec file(String arity) {
    return PositionalParamSpec.builder()
        .type(String.class)
        .index("0")
        .arity(arity)
        .paramLabel("FILE")
        .description("A cycle file; - reads the standard input.")
        .build();
  }
}
