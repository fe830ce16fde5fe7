package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.CycleFiles;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.report.ChangesReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.CycleRefused;
import io.github.tiderule.engine.change.AdviceChange;
import io.github.tiderule.engine.change.Told;
import io.github.tiderule.format.json.ChangesJson;
import io.github.tiderule.format.json.Layout;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Supplier;

/** {@code changes}: what moved between two cycle files, or in one since an earlier moment. */
final class ChangesCommand {

  private final Streams streams;
  private final Supplier<Engine> engine;
  private final boolean json;
  private final CycleFiles files;

  ChangesCommand(Streams streams, Supplier<Engine> engine, boolean json) {
    this.streams = streams;
    this.engine = engine;
    this.json = json;
    this.files = new CycleFiles(streams, json);
  }

  /**
   * Compares two files of one season.
   *
   * @throws IOException if the answer cannot be written
   */
  int between(Given before, Given after) throws IOException {
    if (before.equals(after) && before.name().equals(Given.STANDARD_INPUT)) {
      return files.refuse("Only one of the two files can be the standard input.");
    }
    Optional<CycleRecord> was = files.read(before, null);
    // one document at most: a refusal names no file
    Optional<CycleRecord> is = was.isEmpty() && json ? Optional.empty() : files.read(after, null);
    if (was.isEmpty() || is.isEmpty()) {
      return ExitStatus.REFUSED;
    }
    String one = was.get().female().id();
    String other = is.get().female().id();
    if (one != null && other != null && !one.equals(other)) {
      return files.refuse(
          "The files are about two females, " + one + " and " + other + "; nothing to compare.");
    }
    if (was.get().asOf().isAfter(is.get().asOf())) {
      return files.refuse(
          before.words() + " is for a later moment than " + after.words() + ". Other way round?");
    }
    return print(was.get(), is.get());
  }

  /**
   * Compares a file with what was known at an earlier moment.
   *
   * @throws IOException if the answer cannot be written
   */
  int since(Given file, Instant moment) throws IOException {
    Optional<CycleRecord> cycle = files.read(file, null);
    if (cycle.isEmpty()) {
      return ExitStatus.REFUSED;
    }
    if (!moment.isBefore(cycle.get().asOf())) {
      return files.refuse("--since must lie before the file's own asOf.");
    }
    CycleRecord then;
    try {
      then = cycle.get().knownAt(moment);
    } catch (CycleRefused e) {
      return files.refuse("--since cannot be told of: " + e.getMessage() + ".");
    }
    return print(then, cycle.get());
  }

  private int print(CycleRecord was, CycleRecord is) throws IOException {
    Engine ready = engine.get();
    Told before = new Told(was, ready.advise().apply(was));
    Told after = new Told(is, ready.advise().apply(is));
    AdviceChange change = AdviceChange.between(before, after);
    new Output(streams.out())
        .print(
            json
                ? ChangesJson.text(change, Layout.INDENTED)
                : ChangesReport.text(before, after, change));
    return ExitStatus.DONE;
  }
}
