package io.github.tiderule.api.command;

import io.github.tiderule.api.json.AdviceJson;
import io.github.tiderule.api.json.Layout;
import io.github.tiderule.api.report.AdviceReport;
import io.github.tiderule.api.report.TraceReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** {@code advise} and {@code trace}: one cycle file in, one answer out. */
final class CycleCommand {

  /** What to print of the answer. */
  enum Form {
    PLAN,
    TRACE,
    JSON
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
    Optional<CycleRecord> cycle = new CycleFiles(streams, form == Form.JSON).read(file, asOf);
    if (cycle.isEmpty()) {
      return ExitStatus.REFUSED;
    }
    new Output(streams.out()).print(answer(cycle.get(), form));
    return ExitStatus.DONE;
  }

  private String answer(CycleRecord cycle, Form form) {
    Engine ready = engine.get();
    Advice advice = ready.advise().apply(cycle);
    return switch (form) {
      case PLAN -> AdviceReport.text(cycle, advice);
      case TRACE -> TraceReport.text(cycle, advice, ready.rules().sources());
      case JSON -> AdviceJson.text(advice, Layout.INDENTED);
    };
  }
}
