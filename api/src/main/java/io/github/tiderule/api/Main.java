package io.github.tiderule.api;

import io.github.tiderule.api.command.Engine;
import io.github.tiderule.api.command.Program;
import io.github.tiderule.api.command.Streams;

/** Starts the program. */
public final class Main {

  private Main() {}

  /** Runs one command and ends the process with its exit status. */
  public static void main(String[] arguments) {
    System.exit(new Program(Streams.ofProcess(), Engine.real()).run(arguments));
  }
}
