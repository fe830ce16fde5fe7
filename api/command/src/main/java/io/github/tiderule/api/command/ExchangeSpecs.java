package io.github.tiderule.api.command;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** What the commands that speak other people's formats are called, and what they take. */
final class ExchangeSpecs {

  static final String CALENDAR = "calendar";
  static final String LABORATORY = "laboratory";
  static final String COLUMNS = "--columns";
  static final String INTO = "--into";
  static final String SAVE = "--save";
  static final String PAIRS = "pairs";
  static final String METHOD = "--method";
  static final String AGAINST = "--against";
  static final String BY = "--by";
  static final String FROM = "--since";
  static final String FHIR = "fhir";
  static final String FHIR_IMPORT = "import";
  static final String FHIR_EXPORT = "export";
  static final String SUBJECT = "--subject";

  private static final String INTO_RECORD =
      "Take them into the last season of a female of the record.";

  private ExchangeSpecs() {}

  static void addTo(CommandSpec top) {
    top.addSubcommand(
            CALENDAR,
            Specs.command(CALENDAR, "Prints the dates of the plan for one cycle file as iCalendar.")
                .addPositional(Specs.file("1")))
        .addSubcommand(LABORATORY, laboratory())
        .addSubcommand(PAIRS, pairs())
        .addSubcommand(FHIR, fhir());
  }

  private static CommandSpec laboratory() {
    return RecordSpecs.orOfRecord(
            Specs.command(
                LABORATORY, "Shows what a laboratory's table of progesterone adds to a season."),
            INTO_RECORD)
        .addOption(
            OptionSpec.builder(COLUMNS)
                .type(String.class)
                .required(true)
                .paramLabel("COLUMNS")
                .description(
                    "Which column holds what, as in at=Drawn,value=Result,unit=Unit.",
                    "Also time, female, method, laboratory; dates=day-first or month-first,",
                    "decimals=comma or point where the table can be read two ways.")
                .build())
        .addOption(into())
        .addOption(save())
        .addPositional(taken("The table, as CSV; - reads the standard input."));
  }

  private static CommandSpec pairs() {
    return Specs.command(
            PAIRS,
            "Proposes one laboratory's own scale, from blood that two laboratories measured.")
        .addOption(
            needed(METHOD, "METHOD", "The method of the laboratory whose scale is asked for."))
        .addOption(needed(AGAINST, "METHOD", "The method of the other laboratory."))
        .addOption(needed(BY, "NAME", "Who answers for it."))
        .addOption(needed(FROM, "DAY", "From when it would be worked by, as in 2027-01-08."))
        .addPositional(
            taken(
                "The pairs, as CSV with the heading value,unit,other,otherUnit;"
                    + " - reads the standard input."));
  }

  private static OptionSpec needed(String option, String label, String description) {
    return OptionSpec.builder(option)
        .type(String.class)
        .required(true)
        .paramLabel(label)
        .description(description)
        .build();
  }

  private static CommandSpec fhir() {
    return Specs.command(FHIR, "Takes in and gives out progesterone as FHIR R4 Observations.")
        .addSubcommand(
            FHIR_IMPORT,
            RecordSpecs.orOfRecord(
                    Specs.command(FHIR_IMPORT, "Shows what FHIR Observations add to a season."),
                    INTO_RECORD)
                .addOption(into())
                .addOption(
                    OptionSpec.builder(SUBJECT)
                        .type(String.class)
                        .paramLabel("NAME")
                        .description(
                            "What their sender calls her: a name, an identifier or a reference,",
                            "where it is neither her name nor her id.")
                        .build())
                .addOption(save())
                .addPositional(
                    taken(
                        "An Observation, a Bundle of them, or one a line;"
                            + " - reads the standard input.")))
        .addSubcommand(
            FHIR_EXPORT,
            RecordSpecs.orOfRecord(
                    Specs.command(FHIR_EXPORT, "Prints the progesterone of a season as a Bundle."),
                    "FILE is the name of a female of the record.")
                .addPositional(Specs.file("1")));
  }

  private static OptionSpec into() {
    return OptionSpec.builder(INTO)
        .type(String.class)
        .required(true)
        .paramLabel("CYCLEFILE")
        .description("The cycle file they belong to; with --record, her name.")
        .build();
  }

  private static OptionSpec save() {
    return OptionSpec.builder(SAVE)
        .type(boolean.class)
        .description("Write what is new into it.")
        .build();
  }

  private static PositionalParamSpec taken(String description) {
    return PositionalParamSpec.builder()
        .type(String.class)
        .index("0")
        .arity("1")
        .paramLabel("FILE")
        .description(description)
        .build();
  }
}
