package io.github.tiderule.api.command;

import io.github.tiderule.api.calendar.AdvisedDates;
import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.command.stream.CycleFiles;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.FirstScreen;
import io.github.tiderule.api.report.RuleReport;
import io.github.tiderule.api.report.TraceReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.rules.RuleCard;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** {@code advise}, {@code trace} and {@code calendar}: one cycle file in, one answer out. */
final class CycleCommand {

  /** What to print of the answer. */
  enum Form {
    SCREEN,
    FULL,
    TRACE,
    RULE,
    JSON,
    CALENDAR
  }

  private final Streams streams;
  private final Supplier<Engine> engine;
  private final BesideFiles beside;

  /**
   * @param beside what is written besides
   */
  CycleCommand(Streams streams, Supplier<Engine> engine, BesideFiles beside) {
    this.streams = streams;
    this.engine = engine;
    this.beside = beside;
  }

  /**
   * @param asOf the moment to advise for instead of the file's own, if given
   * @throws IOException if the answer cannot be written
   */
  int run(Given file, Form form, @Nullable Instant asOf) throws IOException {
    return run(file, form, asOf, "");
  }

  /**
   * Prints why one rule spoke or kept silent.
   *
   * @param rule the rule's id, which must be known
   * @throws IOException if the answer cannot be written
   */
  int why(Given file, String rule) throws IOException {
    return run(file, Form.RULE, null, rule);
  }

  private int run(Given file, Form form, @Nullable Instant asOf, String rule) throws IOException {
    CycleFiles files = new CycleFiles(streams, form == Form.JSON);
    Optional<CycleRecord> cycle = files.read(file, asOf);
    if (cycle.isEmpty()) {
      return ExitStatus.REFUSED;
    }
    Engine ready = engine.get();
    Reasoning reasoning = ready.reason().apply(cycle.get());
    try {
      beside.write(cycle.get(), reasoning, ready.rules());
    } catch (BesideFiles.Unwritable e) {
      return files.refuse(e.getMessage());
    }
    new Output(streams.out()).print(answer(cycle.get(), reasoning, ready, form, rule));
    return ExitStatus.DONE;
  }

  private static String answer(
      CycleRecord cycle, Reasoning reasoning, Engine ready, Form form, String rule) {
    return switch (form) {
      case SCREEN -> FirstScreen.text(cycle, reasoning.advice());
      case FULL -> AdviceReport.text(cycle, reasoning.advice());
      case TRACE -> TraceReport.text(cycle, reasoning, ready.rules().sources());
      case RULE -> RuleReport.text(cycle, reasoning, card(ready, rule), ready.rules().sources());
      case JSON -> AdviceJson.text(reasoning.advice(), Layout.INDENTED);
      case CALENDAR ->
          CalendarFeed.text(
              CalendarFeed.seasonOf(cycle),
              List.of(
                  AdvisedDates.of(
                      AdviceJson.text(reasoning.advice(), Layout.ONE_LINE),
                      CalendarFeed.nameOf(cycle.female()))),
              cycle.asOf());
    };
  }

  private static RuleCard card(Engine engine, String rule) {
    return engine.rules().cards().stream()
        .filter(card -> card.id().equals(rule))
        .findFirst()
        .orElseThrow();
  }
}
