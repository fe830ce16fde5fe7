package io.github.tiderule.cases.difference;

import io.github.tiderule.cases.difference.program.LoadedProgram;
import io.github.tiderule.cases.difference.program.Printed;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A program that is asked, and the folder its answers go to.
 *
 * @param protocol a clinic's own parameters, for the commands that take some
 * @param scratch an empty directory for files a command reads or writes
 */
record Asked(LoadedProgram program, @Nullable Path protocol, Folder folder, Path scratch) {

  /** How a command is told to read its standard input. */
  static final String INPUT = "-";

  /**
   * Runs a command and writes what it prints, with the scratch directory left out of it.
   *
   * @param name of the file it goes to
   * @throws IOException if that cannot be written
   * @throws ReflectiveOperationException if the program cannot be run
   */
  void run(String name, String input, String... command)
      throws IOException, ReflectiveOperationException {
    folder.write(name, printed(input, command).text());
  }

  /** The same for a command that takes a protocol. */
  void runWithProtocol(String name, String input, String... command)
      throws IOException, ReflectiveOperationException {
    run(name, input, withProtocol(command));
  }

  /** What a command prints, with the scratch directory left out of it. */
  Printed printed(String input, String... command) throws ReflectiveOperationException {
    Printed printed = program.run(input, command);
    return new Printed(printed.status(), clean(printed.out()), clean(printed.err()));
  }

  /** A command with the protocol, if there is one. */
  String[] withProtocol(String... command) {
    if (protocol == null) {
      return command;
    }
    List<String> arguments = new ArrayList<>(List.of(command));
    arguments.addAll(1, List.of("--protocol", protocol.toString()));
    return arguments.toArray(String[]::new);
  }

  private String clean(String text) {
    return text.replace(scratch + "/", "");
  }
}
