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

  private ExchangeSpecs() {}

  static void addTo(CommandSpec top) {
    top.addSubcommand(
            CALENDAR,
            Specs.command(CALENDAR, "Prints the dates of the plan for one cycle file as iCalendar.")
                .addPositional(Specs.file("1")))
        .addSubcommand(LABORATORY, laboratory());
  }

  private static CommandSpec laboratory() {
    return Specs.command(
            LABORATORY, "Shows what a laboratory's table of progesterone adds to a cycle file.")
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
        .addOption(
            OptionSpec.builder(INTO)
                .type(String.class)
                .required(true)
                .paramLabel("CYCLEFILE")
                .description("The cycle file they belong to.")
                .build())
        .addOption(
            OptionSpec.builder(SAVE)
                .type(boolean.class)
                .description("Write what is new into the cycle file.")
                .build())
        .addPositional(
            PositionalParamSpec.builder()
                .type(String.class)
                .index("0")
                .arity("1")
                .paramLabel("FILE")
                .description("The table, as CSV; - reads the standard input.")
                .build());
  }
}
