package io.github.tiderule.api.command;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.command.stream.CycleFiles;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.InputLines;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.record.PastSeasons;
import io.github.tiderule.api.record.store.Store;
import io.github.tiderule.api.report.AccuracyReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.WhelpedSeason;
import io.github.tiderule.engine.advice.course.LookBack;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.json.AccuracyJson;
import io.github.tiderule.format.json.Layout;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * {@code accuracy}: past seasons one a line in, or those of the record, whelpings beside their
 * forecasts out.
 */
final class AccuracyCommand {

  private final Streams streams;
  private final Supplier<Engine> engine;
  private final boolean json;
  private final CycleFiles files;
  private final List<WhelpedSeason> seasons = new ArrayList<>();
  private int others;

  AccuracyCommand(Streams streams, Supplier<Engine> engine, boolean json) {
    this.streams = streams;
    this.engine = engine;
    this.json = json;
    this.files = new CycleFiles(streams, json);
  }

  /**
   * @throws IOException if the answer cannot be written
   */
  int run(Given file) throws IOException {
    try (InputStream in = file.open(streams)) {
      InputLines lines = new InputLines(in, CycleFile.MOST_BYTES);
      int number = 0;
      for (byte[] line = lines.next(); line != null; line = lines.next()) {
        number++;
        if (!new String(line, StandardCharsets.UTF_8).isBlank()
            && !read(line, "line " + number + " of " + file.words())) {
          return ExitStatus.REFUSED;
        }
      }
    } catch (Given.Unreadable e) {
      return files.refuse(e.getMessage());
    }
    return print();
  }

  /**
   * Of every season of a record whose whelping is known.
   *
   * @param user whose females alone; absent for all
   * @throws IOException if the answer cannot be written
   */
  int run(Store store, @Nullable Person user, Instant now) throws IOException {
    PastSeasons.Compared compared =
        store
            .read(
                ledger ->
                    PastSeasons.of(
                        ledger,
                        wanted ->
                            user == null
                                ? ledger.females().all(wanted)
                                : ledger.females().seenBy(user.key(), false, wanted)))
            .compared(Integer.MAX_VALUE, now, engine.get().advise());
    seasons.addAll(compared.seasons());
    others += compared.others();
    return print();
  }

  private int print() throws IOException {
    new Output(streams.out())
        .print(
            json
                ? AccuracyJson.text(seasons, others, Layout.INDENTED)
                : AccuracyReport.text(seasons, others));
    return ExitStatus.DONE;
  }

  private boolean read(byte[] line, String words) throws IOException {
    Optional<CycleRecord> cycle = files.accepted(words, CycleFile.read(line));
    if (cycle.isEmpty()) {
      return false;
    }
    LookBack lookBack = engine.get().advise().apply(cycle.get()).course().lookBack();
    if (lookBack == null) {
      others++;
    } else {
      seasons.add(WhelpedSeason.of(cycle.get(), lookBack));
    }
    return true;
  }
}
