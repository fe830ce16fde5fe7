package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.StudPlan;
import io.github.tiderule.format.SampleAdvice;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.sentence.Sentence;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;

/**
 * What one run of the program did, with an engine that answers by a given function.
 *
 * @param engines how often an engine was made
 * @param asked the cycles the engine was asked about
 */
record Ran(int status, String out, String err, int engines, List<CycleRecord> asked) {

  private static final RuleBase RULES = RuleBase.load();

  /** What the engine says of one stud, whoever asks. */
  private static final StudPlan SHARED =
      new StudPlan(
          List.of(new StudPlan.Service(Instant.parse("2027-01-14T09:00:00Z"), "juniper", 0.9)),
          List.of(
              new StudPlan.Part(
                  "juniper",
                  List.of(Instant.parse("2027-01-14T09:00:00Z")),
                  0.9,
                  List.of(0.9),
                  0.25)),
          List.of(new StudPlan.LeftOut("hazel", Sentence.of("See a vet first."))),
          0.9);

  static Ran with(String input, String... arguments) {
    return withEngine(cycle -> SampleAdvice.full(), input, arguments);
  }

  static Ran withEngine(Function<CycleRecord, Advice> advise, String input, String... arguments) {
    InputStream in = new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8));
    return run(advise, in, new ByteArrayOutputStream(), arguments);
  }

  /** A run whose standard output fails. */
  static Ran intoBroken(String message, String... arguments) {
    OutputStream broken =
        new OutputStream() {
          @Override
          public void write(int one) throws IOException {
            throw new IOException(message);
          }
        };
    return run(cycle -> SampleAdvice.full(), InputStream.nullInputStream(), broken, arguments);
  }

  static Ran run(
      Function<CycleRecord, Advice> advise, InputStream in, OutputStream out, String... arguments) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    AtomicInteger engines = new AtomicInteger();
    List<CycleRecord> asked = new CopyOnWriteArrayList<>();
    Program program =
        new Program(
            new Streams(in, out, err),
            () -> {
              engines.incrementAndGet();
              return new Engine(
                  cycle -> {
                    asked.add(cycle);
                    return advise.apply(cycle);
                  },
                  (cycles, services) -> {
                    asked.addAll(cycles.values());
                    return SHARED;
                  },
                  RULES);
            });
    int status = program.run(arguments);
    String written =
        out instanceof ByteArrayOutputStream bytes ? bytes.toString(StandardCharsets.UTF_8) : "";
    return new Ran(
        status, written, err.toString(StandardCharsets.UTF_8), engines.get(), List.copyOf(asked));
  }
}
