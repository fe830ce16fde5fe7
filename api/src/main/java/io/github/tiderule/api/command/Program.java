package io.github.tiderule.api.command;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** The program: arguments in, an exit status out. Streams and engine are given to it. */
public final class Program {

  private static final int LAST_YEAR = 2060;
  private static final int FIRST_YEAR = 2000;

  private final Streams streams;
  private final Supplier<Engine> engine;

  /**
   * @param engine asked at most once, and only by a command that needs it
   */
  public Program(Streams streams, Supplier<Engine> engine) {
    this.streams = streams;
    this.engine = new Once<>(engine);
  }

  /** Runs one command and gives its exit status. */
  public int run(String... arguments) {
    CommandLine line = new CommandLine(Specs.top(arguments));
    line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    line.setOut(new PrintWriter(new OutputStreamWriter(streams.out(), StandardCharsets.UTF_8)));
    line.setErr(new PrintWriter(new OutputStreamWriter(streams.err(), StandardCharsets.UTF_8)));
    line.setExecutionStrategy(this::execute);
    line.setExecutionExceptionHandler((fault, command, parsed) -> fault(fault));
    int status = line.execute(arguments);
    line.getOut().flush();
    line.getErr().flush();
    return status;
  }

  private int execute(ParseResult parsed) {
    Integer help = CommandLine.executeHelpRequest(parsed);
    if (help != null) {
      return help;
    }
    if (!parsed.hasSubcommand()) {
      throw new ParameterException(parsed.commandSpec().commandLine(), "Which command?");
    }
    try {
      return execute(parsed.subcommand().commandSpec().name(), parsed.subcommand());
    } catch (IOException e) {
      return Output.readerHasGone(e) ? ExitStatus.DONE : broken(e);
    } catch (ParameterException e) {
      throw e;
    } catch (RuntimeException | StackOverflowError e) {
      return fault(e);
    }
  }

  private int execute(String command, ParseResult parsed) throws IOException {
    return switch (command) {
      case Specs.ADVISE -> {
        boolean json = parsed.hasMatchedOption(Specs.JSON);
        yield new CycleCommand(streams, engine).run(file(parsed), form(json), asOf(parsed));
      }
      case Specs.TRACE ->
          new CycleCommand(streams, engine).run(file(parsed), CycleCommand.Form.TRACE, null);
      case ExchangeSpecs.CALENDAR ->
          new CycleCommand(streams, engine).run(file(parsed), CycleCommand.Form.CALENDAR, null);
      case ExchangeSpecs.LABORATORY ->
          new LaboratoryCommand(streams)
              .run(
                  file(parsed),
                  parsed.matchedOptionValue(ExchangeSpecs.COLUMNS, ""),
                  new Given(parsed.matchedOptionValue(ExchangeSpecs.INTO, "")),
                  parsed.hasMatchedOption(ExchangeSpecs.SAVE));
      case Specs.BATCH -> new BatchCommand(streams, engine).run(file(parsed));
      case Specs.RULEBOOK -> new RulebookCommand(streams, engine).run(format(parsed));
      default -> new RecordCommands(streams, engine).run(command, parsed);
    };
  }

  private static CycleCommand.Form form(boolean json) {
    return json ? CycleCommand.Form.JSON : CycleCommand.Form.PLAN;
  }

  private static Given file(ParseResult parsed) {
    return new Given(parsed.matchedPositionalValue(0, Given.STANDARD_INPUT));
  }

  private static @Nullable Instant asOf(ParseResult parsed) {
    if (!parsed.hasMatchedOption(Specs.AS_OF)) {
      return null;
    }
    String text = parsed.matchedOptionValue(Specs.AS_OF, "");
    try {
      OffsetDateTime moment = OffsetDateTime.parse(text);
      if (moment.getYear() >= FIRST_YEAR && moment.getYear() <= LAST_YEAR) {
        return moment.toInstant();
      }
    } catch (DateTimeException e) {
      // refused below
    }
    throw new ParameterException(
        parsed.commandSpec().commandLine(),
        "--as-of is \"" + text + "\"; write it like 2027-01-12T18:30:00+01:00.");
  }

  private static String format(ParseResult parsed) {
    String format = parsed.matchedOptionValue(Specs.FORMAT, RulebookCommand.MARKDOWN);
    if (!RulebookCommand.FORMATS.contains(format)) {
      throw new ParameterException(
          parsed.commandSpec().commandLine(),
          "--format is \""
              + format
              + "\"; it can be "
              + String.join(", ", RulebookCommand.FORMATS)
              + ".");
    }
    return format;
  }

  private int fault(Throwable fault) {
    return fail("A fault of ours: " + Fault.words(fault) + ". Please report it.");
  }

  private int broken(IOException failure) {
    return fail("Reading or writing failed: " + Fault.words(failure) + ".");
  }

  private int fail(String message) {
    try {
      new Output(streams.err()).print(message + "\n");
    } catch (IOException e) {
      // Nobody is left to tell.
    }
    return ExitStatus.FAULT;
  }
}
