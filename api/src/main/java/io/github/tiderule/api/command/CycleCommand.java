package io.github.tiderule.api.command;

import io.github.tiderule.api.calendar.AdvisedDates;
import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.cycle.CycleFile;
import io.github.tiderule.api.cycle.Reading;
import io.github.tiderule.api.json.AdviceJson;
import io.github.tiderule.api.json.Layout;
import io.github.tiderule.api.json.ProblemsJson;
import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.RefusalReport;
import io.github.tiderule.api.report.TraceReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** {@code advise}, {@code trace} and {@code calendar}: one cycle file in, one answer out. */
final class CycleCommand {

  /** What to print of the answer. */
  enum Form {
    PLAN,
    TRACE,
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
    Reading reading;
    try (InputStream in = file.open(streams)) {
      reading = read(file, in, asOf);
    } catch (Given.Unreadable e) {
      new Output(streams.err()).print(e.getMessage() + "\n");
      return ExitStatus.REFUSED;
    }
    if (reading instanceof Reading.Refused refused) {
      if (form == Form.JSON) {
        new Output(streams.out()).print(ProblemsJson.text(refused.problems(), Layout.INDENTED));
      } else {
        new Output(streams.err()).print(RefusalReport.text(file.words(), refused.problems()));
      }
      return ExitStatus.REFUSED;
    }
    CycleRecord cycle = ((Reading.Read) reading).cycle();
    new Output(streams.out()).print(answer(cycle, form));
    return ExitStatus.DONE;
  }

  private static Reading read(Given file, InputStream in, @Nullable Instant asOf)
      throws Given.Unreadable {
    try {
      return CycleFile.read(in, asOf);
    } catch (IOException e) {
      throw new Given.Unreadable(file.words() + " cannot be read to its end.");
    }
  }

  private String answer(CycleRecord cycle, Form form) {
    Engine ready = engine.get();
    Advice advice = ready.advise().apply(cycle);
    return switch (form) {
      case PLAN -> AdviceReport.text(cycle, advice);
      case TRACE -> TraceReport.text(cycle, advice, ready.rules().sources());
      case JSON -> AdviceJson.text(advice, Layout.INDENTED);
      case CALENDAR ->
          CalendarFeed.text(
              CalendarFeed.seasonOf(cycle),
              List.of(
                  AdvisedDates.of(
                      AdviceJson.text(advice, Layout.ONE_LINE),
                      CalendarFeed.nameOf(cycle.female()))),
              cycle.asOf());
    };
  }
}
