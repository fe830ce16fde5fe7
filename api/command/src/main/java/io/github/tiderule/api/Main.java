package io.github.tiderule.api;

import io.github.tiderule.api.command.Program;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.Streams;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** Starts the program. */
public final class Main {

  private Main() {}

  /** Runs one command and ends the process with its exit status. */
  public static void main(String[] arguments) {
    // most runs need the engine, and making it takes longer than reading a file: begin at once
    CompletableFuture<Engine> engine = CompletableFuture.supplyAsync(Engine.real());
    System.exit(new Program(Streams.ofProcess(), () -> made(engine)).run(arguments));
  }

  private static Engine made(CompletableFuture<Engine> engine) {
    try {
      return engine.join();
    } catch (CompletionException e) {
      throw e.getCause() instanceof RuntimeException cause ? cause : e;
    }
  }
}
