package io.github.tiderule.api.command;

import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.command.stream.CycleFiles;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.SeasonFile;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.service.SeasonChanges;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.fhir.FhirExport;
import io.github.tiderule.format.fhir.FhirImport;
import io.github.tiderule.format.fhir.Found;
import io.github.tiderule.format.fhir.FoundReport;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.node.Utf8;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * {@code fhir import} and {@code fhir export}: results as FHIR Observations, into a cycle file and
 * out of it.
 */
final class FhirCommand {

  private final Streams streams;

  FhirCommand(Streams streams) {
    this.streams = streams;
  }

  /**
   * Prints the results of a cycle file as a Bundle.
   *
   * @throws IOException if something cannot be written
   */
  int export(Given file) throws IOException {
    Optional<CycleRecord> read = new CycleFiles(streams, false).read(file, null);
    if (read.isEmpty()) {
      return ExitStatus.REFUSED;
    }
    CycleRecord cycle = read.get();
    new Output(streams.out())
        .print(
            FhirExport.text(
                cycle, CalendarFeed.seasonOf(cycle), Set.of(), List.of(), Layout.INDENTED));
    return ExitStatus.DONE;
  }

  /**
   * Shows what a file adds to a season, and adds it.
   *
   * @param meant the season they belong to
   * @param subject what the sender calls the female, if it is neither her name nor her id
   * @param save whether to change it
   * @throws IOException if something cannot be written
   */
  int take(Given file, LaboratoryCommand.Meant meant, @Nullable String subject, boolean save)
      throws IOException {
    try {
      Into into = meant.find();
      Problems problems = new Problems();
      Optional<List<Found>> found =
          Utf8.text(file.bytes(streams, CycleFile.MOST_BYTES + 1), CycleFile.MOST_BYTES, problems)
              .flatMap(
                  text ->
                      FhirImport.preview(
                          text,
                          into.cycle(),
                          into.season(),
                          subject,
                          into.taken(),
                          Pointer.ROOT,
                          problems));
      if (found.isEmpty()) {
        throw new SeasonFile.Refused(file.words(), problems.all());
      }
      List<Found> all = found.get();
      new Output(streams.out()).print(FoundReport.text(all));
      if (!save) {
        return done(all, "Nothing is saved; --save saves what is new.");
      }
      if (all.stream().noneMatch(one -> one.outcome().changes())) {
        return done(all, "There is nothing to save.");
      }
      into.save(SeasonChanges.of(all));
      return done(all, "What is new is in " + into.words() + ".");
    } catch (Given.Unreadable e) {
      new Output(streams.err()).print(e.getMessage() + "\n");
      return ExitStatus.REFUSED;
    } catch (SeasonFile.Refused e) {
      return e.print(streams);
    }
  }

  private int done(List<Found> all, String words) throws IOException {
    new Output(streams.err()).print(FoundReport.counts(all) + ". " + words + "\n");
    boolean whole = all.stream().noneMatch(one -> one.outcome() == Found.Outcome.REFUSED);
    return whole ? ExitStatus.DONE : ExitStatus.SOME_REFUSED;
  }
}
