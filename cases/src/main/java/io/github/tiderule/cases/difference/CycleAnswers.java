package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** What each command that takes one cycle file says to it. */
record CycleAnswers(Asked asked) {

  /**
   * Writes it.
   *
   * @param name what the case is called
   * @throws IOException if an answer cannot be written
   * @throws ReflectiveOperationException if the program cannot be run
   */
  void write(String name, String cycle) throws IOException, ReflectiveOperationException {
    asked.runWithProtocol("json/" + name + ".json", cycle, "advise", "--json", Asked.INPUT);
    asked.runWithProtocol("screen/" + name + ".txt", cycle, "advise", Asked.INPUT);
    asked.runWithProtocol("advise/" + name + ".txt", cycle, "advise", "--full", Asked.INPUT);
    asked.runWithProtocol("trace/" + name + ".txt", cycle, "trace", Asked.INPUT);
    asked.run("calendar/" + name + ".ics", cycle, "calendar", Asked.INPUT);
    asked.run("fhir/" + name + ".json", cycle, "fhir", "export", Asked.INPUT);
    curve(name, cycle);
  }

  private void curve(String name, String cycle) throws IOException, ReflectiveOperationException {
    Path picture = asked.scratch().resolve("curve.svg");
    asked.printed(cycle, asked.withProtocol("advise", "--curve", picture.toString(), Asked.INPUT));
    if (Files.exists(picture)) {
      asked.folder().write("curve/" + name + ".svg", Files.readString(picture));
      Files.delete(picture);
    }
  }
}
