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
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** One answer, warm: from the bytes of a cycle file to those of an Advice. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class AnswerBenchmark {

  /** How many observations, doses and half-days to breed on, 0 for all there are. */
  @Param({
    "0/2/0", "2/2/0", "5/2/0", "10/2/0", "20/2/0", "40/2/0", "10/1/0", "10/3/0", "10/2/2", "10/2/4",
    "10/2/8", "10/2/16"
  })
  public String size = "";

  private Tiderule engine = Tiderule.create();
  private byte[] file = {};

  /** Writes the cycle file, and makes sure that it is one. */
  @Setup
  public void write() {
    int[] sizes =
        java.util.Arrays.stream(size.split("/", -1)).mapToInt(Integer::parseInt).toArray();
    file = InventedSeason.of(sizes[0], sizes[1], sizes[2]);
    engine = Tiderule.create();
    read();
  }

  private CycleRecord read() {
    Reading reading = CycleFile.read(file);
    if (reading instanceof Reading.Read read) {
      return read.cycle();
    }
    throw new IllegalStateException("not a cycle file: " + reading);
  }

  /** The whole of it. */
  @Benchmark
  public String whole() {
    Advice advice = engine.advise(read());
    return AdviceJson.text(advice, Layout.ONE_LINE);
  }
}
