package io.github.tiderule.benchmark;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The three parts of an answer to ten observations: reading it, the engine, writing it. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class PartsBenchmark {

  private final byte[] file = InventedSeason.of(10, 2, 0);
  private final Tiderule engine = Tiderule.create();
  private final CycleRecord cycle = ((Reading.Read) CycleFile.read(file)).cycle();
  private final Advice advice = engine.advise(cycle);

  /** From bytes to a record. */
  @Benchmark
  public Reading reading() {
    return CycleFile.read(file);
  }

  /** From a record to an Advice. */
  @Benchmark
  public Advice engine() {
    return engine.advise(cycle);
  }

  /** From an Advice to text. */
  @Benchmark
  public String writing() {
    return AdviceJson.text(advice, Layout.ONE_LINE);
  }
}
