package io.github.tiderule.api.command;

import io.github.tiderule.api.cycle.CycleFile;
import io.github.tiderule.api.cycle.Reading;
import io.github.tiderule.api.laboratoryfile.Columns;
import io.github.tiderule.api.laboratoryfile.LaboratoryFile;
import io.github.tiderule.api.laboratoryfile.Line;
import io.github.tiderule.api.laboratoryfile.PreviewReport;
import io.github.tiderule.api.node.Node;
import io.github.tiderule.api.node.NodeReader;
import io.github.tiderule.api.node.NodeText;
import io.github.tiderule.api.node.Utf8;
import io.github.tiderule.api.problem.Pointer;
import io.github.tiderule.api.problem.Problem;
import io.github.tiderule.api.problem.Problems;
import io.github.tiderule.api.report.RefusalReport;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** {@code laboratory}: shows what a laboratory's table would add to a cycle file, and adds it. */
final class LaboratoryCommand {

  private final Streams streams;

  LaboratoryCommand(Streams streams) {
    this.streams = streams;
  }

  /**
   * @param columns which column holds what
   * @param into the cycle file
   * @param save whether to change the cycle file
   * @throws IOException if something cannot be written
   */
  int run(Given table, String columns, Given into, boolean save) throws IOException {
    try {
      byte[] cycleBytes = bytes(into);
      Reading reading = CycleFile.read(cycleBytes);
      if (reading instanceof Reading.Refused refused) {
        return refused(into.words(), refused.problems());
      }
      Problems problems = new Problems();
      Optional<Columns> read = Columns.read(columns, Pointer.ROOT, problems);
      if (read.isEmpty()) {
        return refused("--columns", problems.all());
      }
      Optional<List<Line>> lines =
          Utf8.text(bytes(table), CycleFile.MOST_BYTES, problems)
              .flatMap(
                  text ->
                      LaboratoryFile.preview(
                          text,
                          read.get(),
                          ((Reading.Read) reading).cycle(),
                          Set.of(),
                          Pointer.ROOT,
                          problems));
      if (lines.isEmpty()) {
        return refused(table.words(), problems.all());
      }
      new Output(streams.out()).print(PreviewReport.text(lines.get()));
      return save ? save(into, cycleBytes, lines.get()) : preview(lines.get());
    } catch (Given.Unreadable e) {
      new Output(streams.err()).print(e.getMessage() + "\n");
      return ExitStatus.REFUSED;
    }
  }

  private byte[] bytes(Given file) throws Given.Unreadable {
    try (InputStream in = file.open(streams)) {
      return in.readNBytes(CycleFile.MOST_BYTES + 1);
    } catch (IOException e) {
      throw new Given.Unreadable(file.words() + " cannot be read to its end.");
    }
  }

  private int refused(String what, List<Problem> problems) throws IOException {
    new Output(streams.err()).print(RefusalReport.text(what, problems));
    return ExitStatus.REFUSED;
  }

  private int preview(List<Line> lines) throws IOException {
    return done(lines, "Nothing is saved; --save saves what is new.");
  }

  private int done(List<Line> lines, String words) throws IOException {
    new Output(streams.err()).print(PreviewReport.counts(lines) + ". " + words + "\n");
    boolean all = lines.stream().noneMatch(line -> line.outcome() == Line.Outcome.REFUSED);
    return all ? ExitStatus.DONE : ExitStatus.SOME_REFUSED;
  }

  private int save(Given into, byte[] before, List<Line> lines) throws IOException {
    List<Node.Members> added = LaboratoryFile.added(lines);
    if (added.isEmpty()) {
      return done(lines, "There is nothing to save.");
    }
    String text = with(before, added);
    if (CycleFile.read(text.getBytes(StandardCharsets.UTF_8)) instanceof Reading.Refused refused) {
      return refused(into.words() + ", with what is new,", refused.problems());
    }
    if (into.name().equals(Given.STANDARD_INPUT)) {
      new Output(streams.err()).print("A cycle file from the standard input cannot be changed.\n");
      return ExitStatus.REFUSED;
    }
    replace(Path.of(into.name()).toAbsolutePath(), text);
    return done(lines, "What is new is in " + into.words() + ".");
  }

  /** The cycle file with more observations at the end, and all else as it was. */
  private static String with(byte[] before, List<Node.Members> added) {
    Problems problems = new Problems();
    Node file =
        Utf8.text(before, CycleFile.MOST_BYTES, problems)
            .flatMap(text -> NodeReader.read(text, problems))
            .orElseThrow();
    Map<String, Node> fields = new LinkedHashMap<>(((Node.Members) file).byKey());
    List<Node> observations = new ArrayList<>();
    if (fields.get("observations") instanceof Node.Entries entries) {
      observations.addAll(entries.all());
    }
    observations.addAll(added);
    fields.put("observations", new Node.Entries(observations));
    return NodeText.indented(new Node.Members(fields));
  }

  /** All of it or nothing, whatever happens meanwhile. */
  private static void replace(Path file, String text) throws IOException {
    Path whole = file.toRealPath();
    Path fresh = Files.createTempFile(whole.getParent(), "tiderule", ".json");
    try {
      // a temporary file is its owner's alone; the cycle file stays as open as it was
      Files.copy(
          whole, fresh, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
      Files.writeString(fresh, text);
      Files.move(fresh, whole, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(fresh);
    }
  }
}
