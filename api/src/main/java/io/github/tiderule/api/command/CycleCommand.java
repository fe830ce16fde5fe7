package io.github.tiderule.api.command;

import io.github.tiderule.api.calendar.AdvisedDates;
import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.json.AdviceJson;
import io.github.tiderule.api.json.Layout;
import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.RuleReport;
import io.github.tiderule.api.report.TraceReport;
import io.github.tiderule.engine.CycleRecord;
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
    PLAN,
    TRACE,
    RULE,
    JSON,
    CALENDAR
  }

  private final Streams streams;
  private final Supplier<Engine> engine;

  CycleCommand(Streams streams, Supplier<Engine> engine) {
    this.streams = streams;
    this.engine = engine;
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
    Optional<CycleRecord> cycle = new CycleFiles(streams, form == Form.JSON).read(file, asOf);
    if (cycle.isEmpty()) {
      return ExitStatus.REFUSED;
    }
    new Output(streams.out()).print(answer(cycle.get(), form, rule));
    return ExitStatus.DONE;
  }

  private String answer(CycleRecord cycle, Form form, String rule) {
    Engine ready = engine.get();
    return switch (form) {
      case PLAN -> AdviceReport.text(cycle, ready.advise().apply(cycle));
      case TRACE -> TraceReport.text(cycle, ready.reason().apply(cycle), ready.rules().sources());
      case RULE ->
          RuleReport.text(
              cycle, ready.reason().apply(cycle), card(ready, rule), ready.rules().sources());
      case JSON -> AdviceJson.text(ready.advise().apply(cycle), Layout.INDENTED);
      case CALENDAR ->
          CalendarFeed.text(
              CalendarFeed.seasonOf(cycle),
              List.of(
                  AdvisedDates.of(
                      AdviceJson.text(ready.advise().apply(cycle), Layout.ONE_LINE),
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
