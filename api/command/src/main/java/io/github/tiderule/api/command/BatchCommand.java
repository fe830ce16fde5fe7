package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.InputLines;
import io.github.tiderule.api.command.stream.LineAnswer;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Progress;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.format.cycle.CycleFile;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/**
 * {@code batch}: cycle files one a line in, answers one a line out, in the same order. Several
 * lines are worked on at once; only so many are held that memory does not grow with the stream.
 */
final class BatchCommand {

  private static final int MOST_HELD = 64;
  private static final int LEAST_THREADS = 2;
  private static final int OUTPUT_BYTES = 1 << 16;

  private final Streams streams;
  private final Supplier<Engine> engine;
  private final Deque<Future<LineAnswer>> held = new ArrayDeque<>();
  private boolean anyRefused;
  private boolean anyFault;

  BatchCommand(Streams streams, Supplier<Engine> engine) {
    this.streams = streams;
    this.engine = engine;
  }

  /**
   * @throws IOException if the answers cannot be written, or the lines not read to their end
   */
  int run(Given file) throws IOException {
    int threads = Math.max(LEAST_THREADS, Runtime.getRuntime().availableProcessors());
    ExecutorService workers =
        Executors.newFixedThreadPool(
            threads,
            work -> {
              Thread thread = new Thread(work, "tiderule-batch");
              thread.setDaemon(true);
              return thread;
            });
    try (InputStream in = file.open(streams)) {
      OutputStream out = new BufferedOutputStream(streams.out(), OUTPUT_BYTES);
      Progress progress = Progress.of(streams, file.size(), System::nanoTime);
      run(new InputLines(in, CycleFile.MOST_BYTES), out, workers, progress);
      progress.end();
    } catch (Given.Unreadable e) {
      new Output(streams.err()).print(e.getMessage() + "\n");
      return ExitStatus.REFUSED;
    } finally {
      workers.shutdownNow();
    }
    if (anyFault) {
      new Output(streams.err())
          .print("A fault of ours in some lines; their answers name it. Please report it.\n");
      return ExitStatus.FAULT;
    }
    return anyRefused ? ExitStatus.SOME_REFUSED : ExitStatus.DONE;
  }

  private void run(InputLines lines, OutputStream out, ExecutorService workers, Progress progress)
      throws IOException {
    long number = 0;
    for (byte[] line = lines.next(); line != null; line = lines.next()) {
      number++;
      progress.read(line.length + 1L);
      if (!LineAnswer.isBlank(line)) {
        byte[] text = line;
        long place = number;
        held.add(
            workers.submit(
                () -> LineAnswer.of(place, text, cycle -> engine.get().advise().apply(cycle))));
      }
      while (held.size() >= MOST_HELD || (!held.isEmpty() && held.element().isDone())) {
        write(held.remove(), out);
        progress.answered();
      }
      if (!lines.ready()) {
        // Whoever feeds us line by line may wait for the answer before the next one.
        writeAll(out);
      }
    }
    writeAll(out);
  }

  private void writeAll(OutputStream out) throws IOException {
    while (!held.isEmpty()) {
      write(held.remove(), out);
    }
    out.flush();
  }

  private void write(Future<LineAnswer> future, OutputStream out) throws IOException {
    LineAnswer answer;
    try {
      answer = future.get();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
    anyRefused |= answer.outcome() == LineAnswer.Outcome.REFUSED;
    anyFault |= answer.outcome() == LineAnswer.Outcome.FAULT;
    out.write(answer.text().getBytes(StandardCharsets.UTF_8));
  }
}
