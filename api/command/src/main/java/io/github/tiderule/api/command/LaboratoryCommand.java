package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.SeasonFile;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.service.SeasonChanges;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.laboratory.Columns;
import io.github.tiderule.format.laboratory.LaboratoryFile;
import io.github.tiderule.format.laboratory.Line;
import io.github.tiderule.format.laboratory.PreviewReport;
import io.github.tiderule.format.node.Utf8;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** {@code laboratory}: shows what a laboratory's table would add to a cycle file, and adds it. */
final class LaboratoryCommand {

  private final Streams streams;

  LaboratoryCommand(Streams streams) {
    this.streams = streams;
  }

  /** Which season is meant; it may be one that cannot be read. */
  interface Meant {
    Into find() throws SeasonFile.Refused, Given.Unreadable;
  }

  /**
   * @param columns which column holds what
   * @param meant the season they belong to
   * @param save whether to change it
   * @throws IOException if something cannot be written
   */
  int run(Given table, String columns, Meant meant, boolean save) throws IOException {
    try {
      Into into = meant.find();
      Problems problems = new Problems();
      Optional<Columns> read = Columns.read(columns, Pointer.ROOT, problems);
      if (read.isEmpty()) {
        throw new SeasonFile.Refused("--columns", problems.all());
      }
      Optional<List<Line>> lines =
          Utf8.text(table.bytes(streams, CycleFile.MOST_BYTES + 1), CycleFile.MOST_BYTES, problems)
              .flatMap(
                  text ->
                      LaboratoryFile.preview(
                          text, read.get(), into.cycle(), into.taken(), Pointer.ROOT, problems));
      if (lines.isEmpty()) {
        throw new SeasonFile.Refused(table.words(), problems.all());
      }
      new Output(streams.out()).print(PreviewReport.text(lines.get()));
      return save ? save(into, lines.get()) : preview(lines.get());
    } catch (Given.Unreadable e) {
      new Output(streams.err()).print(e.getMessage() + "\n");
      return ExitStatus.REFUSED;
    } catch (SeasonFile.Refused e) {
      return e.print(streams);
    }
  }

  private int preview(List<Line> lines) throws IOException {
    return done(lines, "Nothing is saved; --save saves what is new.");
  }

  private int done(List<Line> lines, String words) throws IOException {
    new Output(streams.err()).print(PreviewReport.counts(lines) + ". " + words + "\n");
    boolean all = lines.stream().noneMatch(line -> line.outcome() == Line.Outcome.REFUSED);
    return all ? ExitStatus.DONE : ExitStatus.SOME_REFUSED;
  }

  private int save(Into into, List<Line> lines)
      throws IOException, SeasonFile.Refused, Given.Unreadable {
    List<SeasonChanges.Change> added =
        LaboratoryFile.added(lines).stream().map(SeasonChanges.Change::added).toList();
    if (added.isEmpty()) {
      return done(lines, "There is nothing to save.");
    }
    into.save(added);
    return done(lines, "What is new is in " + into.words() + ".");
  }
}
