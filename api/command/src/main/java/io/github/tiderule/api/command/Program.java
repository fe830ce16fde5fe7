package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Fault;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.Once;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Protocol;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.report.RefusalReport;
import io.github.tiderule.engine.LaboratoryScale;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.ProblemsJson;
import io.github.tiderule.format.problem.NearMiss;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.fact.assay.Method;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Collectors;
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
    StringWriter wrong = new StringWriter();
    line.setErr(new PrintWriter(wrong));
    line.setExecutionStrategy(this::execute);
    line.setExecutionExceptionHandler((fault, command, parsed) -> fault(fault));
    int status = line.execute(arguments);
    line.getOut().flush();
    if (!wrong.toString().isEmpty()) {
      tell(wrong.toString());
    }
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
    if (!parsed.hasMatchedOption(Specs.PROTOCOL)) {
      return execute(command, parsed, engine);
    }
    Given protocol = new Given(parsed.matchedOptionValue(Specs.PROTOCOL, ""));
    if (protocol.name().equals(Given.STANDARD_INPUT)) {
      throw new ParameterException(
          parsed.commandSpec().commandLine(), "--protocol takes a file, not the standard input.");
    }
    try {
      Engine usual = engine.get();
      Engine local = usual.with().apply(Protocol.read(protocol, streams, usual.rules()));
      return execute(command, parsed, () -> local);
    } catch (Given.Unreadable e) {
      new Output(streams.err()).print(e.getMessage() + "\n");
      return ExitStatus.REFUSED;
    } catch (Protocol.Refused e) {
      if (parsed.hasMatchedOption(Specs.JSON)) {
        new Output(streams.out()).print(ProblemsJson.text(e.problems(), Layout.INDENTED));
      } else {
        new Output(streams.err()).print(RefusalReport.text(protocol.words(), e.problems()));
      }
      return ExitStatus.REFUSED;
    }
  }

  private int execute(String command, ParseResult parsed, Supplier<Engine> chosen)
      throws IOException {
    return switch (command) {
      case Specs.ADVISE ->
          cycle(parsed, chosen).run(file(parsed), form(parsed), moment(parsed, Specs.AS_OF));
      case Specs.TRACE ->
          parsed.hasMatchedOption(Specs.RULE)
              ? cycle(parsed, chosen).why(file(parsed), rule(parsed, chosen.get()))
              : cycle(parsed, chosen).run(file(parsed), CycleCommand.Form.TRACE, null);
      case ExchangeSpecs.CALENDAR ->
          cycle(parsed, chosen).run(file(parsed), CycleCommand.Form.CALENDAR, null);
      case ExchangeSpecs.LABORATORY -> laboratory(parsed, chosen);
      case ExchangeSpecs.PAIRS -> pairs(parsed, chosen);
      case ExchangeSpecs.FHIR -> fhir(parsed, chosen);
      case Specs.BATCH -> new BatchCommand(streams, chosen).run(file(parsed));
      case Specs.CHANGES -> changes(parsed);
      case Specs.STUD -> stud(parsed);
      case Specs.ACCURACY -> accuracy(parsed, chosen);
      case Specs.RULEBOOK -> new RulebookCommand(streams, chosen).run(format(parsed));
      default -> new RecordCommands(streams, chosen).run(command, parsed);
    };
  }

  private int accuracy(ParseResult parsed, Supplier<Engine> chosen) throws IOException {
    if (!parsed.hasMatchedOption(Specs.RECORD)) {
      return new AccuracyCommand(streams, chosen, parsed.hasMatchedOption(Specs.JSON))
          .run(file(parsed));
    }
    if (parsed.hasMatchedPositional(0)) {
      throw new ParameterException(
          parsed.commandSpec().commandLine(), "Give a FILE or --record, not both.");
    }
    return new RecordCommands(streams, chosen).run(Specs.ACCURACY, parsed);
  }

  private int laboratory(ParseResult parsed, Supplier<Engine> chosen) throws IOException {
    if (parsed.hasMatchedOption(Specs.RECORD)) {
      return new RecordCommands(streams, chosen).run(ExchangeSpecs.LABORATORY, parsed);
    }
    Given into = new Given(parsed.matchedOptionValue(ExchangeSpecs.INTO, ""));
    return new LaboratoryCommand(streams)
        .run(
            file(parsed),
            parsed.matchedOptionValue(ExchangeSpecs.COLUMNS, ""),
            () -> Into.file(into, streams),
            parsed.hasMatchedOption(ExchangeSpecs.SAVE));
  }

  private int pairs(ParseResult parsed, Supplier<Engine> chosen) throws IOException {
    Method method = method(parsed, ExchangeSpecs.METHOD);
    if (!LaboratoryScale.learns(method)) {
      throw new ParameterException(
          parsed.commandSpec().commandLine(),
          "--method is \"ria\", which every other scale is read against; exchange the two.");
    }
    String by = parsed.matchedOptionValue(ExchangeSpecs.BY, "").strip();
    if (by.isEmpty() || by.codePoints().anyMatch(Character::isISOControl)) {
      throw new ParameterException(
          parsed.commandSpec().commandLine(), "--by wants the name of who answers for it.");
    }
    Method against = method(parsed, ExchangeSpecs.AGAINST);
    LocalDate since = day(parsed, ExchangeSpecs.FROM);
    return new PairsCommand(streams, chosen.get().rules().parameters())
        .run(file(parsed), method, against, by, since);
  }

  private static Method method(ParseResult parsed, String option) {
    String word = parsed.matchedOptionValue(option, "");
    return Arrays.stream(Method.values())
        .filter(method -> method.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new ParameterException(
                    parsed.commandSpec().commandLine(),
                    option
                        + " is \""
                        + word
                        + "\"; it can be "
                        + Arrays.stream(Method.values())
                            .map(Method::word)
                            .collect(Collectors.joining(", "))
                        + "."));
  }

  private static LocalDate day(ParseResult parsed, String option) {
    String text = parsed.matchedOptionValue(option, "");
    try {
      LocalDate day = LocalDate.parse(text);
      if (day.getYear() >= FIRST_YEAR && day.getYear() <= LAST_YEAR) {
        return day;
      }
    } catch (DateTimeException e) {
      // refused below
    }
    throw new ParameterException(
        parsed.commandSpec().commandLine(),
        option + " is \"" + text + "\"; write it like 2027-01-08.");
  }

  private int fhir(ParseResult parsed, Supplier<Engine> chosen) throws IOException {
    if (!parsed.hasSubcommand()) {
      throw new ParameterException(parsed.commandSpec().commandLine(), "Import or export?");
    }
    ParseResult what = parsed.subcommand();
    if (what.hasMatchedOption(Specs.RECORD)) {
      boolean exports = what.commandSpec().name().equals(ExchangeSpecs.FHIR_EXPORT);
      return new RecordCommands(streams, chosen)
          .run(exports ? RecordSpecs.BUNDLE : RecordSpecs.TAKE, what);
    }
    FhirCommand command = new FhirCommand(streams);
    Given into = new Given(what.matchedOptionValue(ExchangeSpecs.INTO, ""));
    return what.commandSpec().name().equals(ExchangeSpecs.FHIR_EXPORT)
        ? command.export(file(what))
        : command.take(
            file(what),
            () -> Into.file(into, streams),
            what.matchedOptionValue(ExchangeSpecs.SUBJECT, null),
            what.hasMatchedOption(ExchangeSpecs.SAVE));
  }

  private CycleCommand cycle(ParseResult parsed, Supplier<Engine> chosen) {
    return new CycleCommand(streams, chosen, BesideFiles.of(parsed));
  }

  private static String rule(ParseResult parsed, Engine engine) {
    String id = parsed.matchedOptionValue(Specs.RULE, "");
    List<String> known = engine.rules().cards().stream().map(RuleCard::id).toList();
    if (known.contains(id)) {
      return id;
    }
    throw new ParameterException(
        parsed.commandSpec().commandLine(),
        "--rule is \""
            + id
            + "\"; "
            + NearMiss.of(id, known)
                .map(near -> "maybe " + near + "?")
                .orElse("the rulebook command lists every rule."));
  }

  private static CycleCommand.Form form(ParseResult parsed) {
    return parsed.hasMatchedOption(Specs.JSON)
        ? CycleCommand.Form.JSON
        : parsed.hasMatchedOption(Specs.FULL) ? CycleCommand.Form.FULL : CycleCommand.Form.SCREEN;
  }

  private static Given file(ParseResult parsed) {
    return new Given(parsed.matchedPositionalValue(0, Given.STANDARD_INPUT));
  }

  private int changes(ParseResult parsed) throws IOException {
    ChangesCommand command =
        new ChangesCommand(streams, engine, parsed.hasMatchedOption(Specs.JSON));
    Instant since = moment(parsed, Specs.SINCE);
    boolean two = parsed.hasMatchedPositional(1);
    if (two == (since != null)) {
      throw new ParameterException(
          parsed.commandSpec().commandLine(),
          "Give two files, BEFORE and AFTER, or one file and --since INSTANT.");
    }
    return since == null
        ? command.between(file(parsed), new Given(parsed.matchedPositionalValue(1, "")))
        : command.since(file(parsed), since);
  }

  private int stud(ParseResult parsed) throws IOException {
    List<Instant> services = new ArrayList<>();
    for (String text : parsed.matchedOptionValue(Specs.SERVICES, "").split(",", -1)) {
      services.add(moment(parsed, Specs.SERVICES, text.strip()));
    }
    List<String> names = parsed.matchedPositionalValue(0, List.of());
    if (names.isEmpty()) {
      throw new ParameterException(
          parsed.commandSpec().commandLine(), "Which females? Name a FILE for each.");
    }
    if (parsed.hasMatchedOption(Specs.RECORD)) {
      return new RecordCommands(streams, engine).stud(parsed, names, services);
    }
    return new StudCommand(streams, engine, parsed.hasMatchedOption(Specs.JSON))
        .run(
            names.stream().map(Given::new).toList(),
            parsed.hasMatchedOption(Specs.LINES),
            services);
  }

  /** The moment an option names; absent when it is not given. */
  private static @Nullable Instant moment(ParseResult parsed, String option) {
    if (!parsed.hasMatchedOption(option)) {
      return null;
    }
    return moment(parsed, option, parsed.matchedOptionValue(option, ""));
  }

  private static Instant moment(ParseResult parsed, String option, String text) {
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
        option + " is \"" + text + "\"; write it like 2027-01-12T18:30:00+01:00.");
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
    tell(message + "\n");
    return ExitStatus.FAULT;
  }

  private void tell(String words) {
    try {
      new Output(streams.err()).print(words);
    } catch (IOException e) {
      // Nobody is left to tell.
    }
  }
}
