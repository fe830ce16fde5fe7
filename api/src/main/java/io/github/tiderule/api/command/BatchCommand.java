package io.github.tiderule.api.command;

import io.github.tiderule.api.cycle.CycleFile;
import io.github.tiderule.api.cycle.Reading;
import io.github.tiderule.api.json.AdviceJson;
import io.github.tiderule.api.json.Layout;
import io.github.tiderule.api.json.ProblemsJson;
import io.github.tiderule.api.problem.Problem;
import io.github.tiderule.api.problem.ProblemCode;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
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

  private enum Outcome {
    ANSWERED,
    REFUSED,
    FAULT
  }

  private record Answer(Outcome outcome, String line) {}

  private final Streams streams;
  private final Supplier<Engine> engine;
  private final Deque<Future<Answer>> held = new ArrayDeque<>();
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
      if (!isBlank(line)) {
        byte[] text = line;
        long place = number;
        held.add(workers.submit(() -> answer(place, text)));
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

  private static boolean isBlank(byte[] line) {
    for (byte character : line) {
      if (character != ' ' && character != '\t' && character != '\r') {
        return false;
      }
    }
    return true;
  }

  private void writeAll(OutputStream out) throws IOException {
    while (!held.isEmpty()) {
      write(held.remove(), out);
    }
    out.flush();
  }

  private void write(Future<Answer> future, OutputStream out) throws IOException {
    Answer answer;
    try {
      answer = future.get();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
    anyRefused |= answer.outcome() == Outcome.REFUSED;
    anyFault |= answer.outcome() == Outcome.FAULT;
    out.write(answer.line().getBytes(StandardCharsets.UTF_8));
  }

  private Answer answer(long number, byte[] line) {
    try {
      Reading reading = CycleFile.read(line);
      if (reading instanceof Reading.Refused refused) {
        return new Answer(Outcome.REFUSED, ProblemsJson.ofLine(number, refused.problems()));
      }
      CycleRecord cycle = ((Reading.Read) reading).cycle();
      Advice advice = engine.get().advise().apply(cycle);
      return new Answer(Outcome.ANSWERED, AdviceJson.text(advice, Layout.ONE_LINE));
    } catch (RuntimeException | StackOverflowError e) {
      Problem fault =
          Problem.of("", ProblemCode.INTERNAL_FAULT, "a fault of ours: " + Fault.words(e));
      return new Answer(Outcome.FAULT, ProblemsJson.ofLine(number, List.of(fault)));
    }
  }
}
