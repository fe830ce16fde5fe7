package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Answers to one cycle file.
 *
 * @param protocol a clinic's own parameters, for the commands that take some
 */
record CycleAnswers(LoadedProgram program, @Nullable Path protocol, Folder folder) {

  private static final String INPUT = "-";

  /**
   * Writes each of them.
   *
   * @param name what the case is called in the dump
   * @throws IOException if one cannot be written
   * @throws ReflectiveOperationException if the program cannot be run
   */
  void write(String name, String cycle) throws IOException, ReflectiveOperationException {
    write("json", name + ".json", cycle, "advise", "--json");
    write("advise", name + ".txt", cycle, "advise");
    write("trace", name + ".txt", cycle, "trace");
    folder
        .of("calendar")
        .write(name + ".ics", program.run(cycle, "calendar", INPUT).text().replace("\r\n", "\n"));
  }

  private void write(String kind, String name, String cycle, String... command)
      throws IOException, ReflectiveOperationException {
    List<String> arguments = new ArrayList<>(List.of(command));
    if (protocol != null) {
      arguments.addAll(List.of("--protocol", protocol.toString()));
    }
    arguments.add(INPUT);
    folder.of(kind).write(name, program.run(cycle, arguments.toArray(String[]::new)).text());
  }
}
