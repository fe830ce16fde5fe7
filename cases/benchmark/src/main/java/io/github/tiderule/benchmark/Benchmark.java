package io.github.tiderule.benchmark;

import io.github.tiderule.cases.oracle.RulesBenchmark;
import io.github.tiderule.engine.Tiderule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Measures everything in one run, and writes down what it found. */
public final class Benchmark {

  private static final int STARTS = 9;
  private static final int BATCH = 20_000;
  private static final int WARM_UP = 3000;
  private static final int RUNS = 1000;
  private static final Path PYTHON = Path.of("/usr/bin/python3");

  private final Path home;
  private final Path api;
  private final int seconds;

  private Benchmark(Path home, Path api, int seconds) {
    this.home = home;
    this.api = api;
    this.seconds = seconds;
  }

  /**
   * Runs it.
   *
   * @param arguments the directory of the benchmark, that of the module {@code api}, and how many
   *     seconds to measure each figure of JMH
   */
  public static void main(String[] arguments) throws IOException, RunnerException {
    new Benchmark(Path.of(arguments[0]), Path.of(arguments[1]), Integer.parseInt(arguments[2]))
        .run();
  }

  private void run() throws IOException, RunnerException {
    Map<String, Double> warm = new LinkedHashMap<>();
    for (RunResult result : new Runner(options()).run()) {
      String name = result.getParams().getBenchmark();
      String method = name.substring(name.lastIndexOf('.') + 1);
      String size = result.getParams().getParam("size");
      warm.put(
          size == null ? method : size,
          result.getPrimaryResult().getStatistics().getPercentile(50) / 1000);
    }
    Tiderule engine = Tiderule.create();
    Map<String, Double> parts = Parts.of(engine, InventedSeason.of(10, 2, 0), WARM_UP, RUNS);
    Figures figures =
        new Figures(warm, parts, commands(), new RulesBenchmark(), posteriors(engine));
    Files.writeString(home.resolve("figures.md"), figures.page());
    Files.writeString(home.resolve("cost.svg"), CostCurve.of(warm));
  }

  private Options options() {
    return new OptionsBuilder()
        .include("AnswerBenchmark|PartsBenchmark|RulesBenchmark")
        .forks(1)
        .warmupIterations(Math.max(1, seconds / 2))
        .warmupTime(TimeValue.seconds(2))
        .measurementIterations(Math.max(1, seconds / 2))
        .measurementTime(TimeValue.seconds(2))
        .build();
  }

  private Map<String, Commands.Run> commands() throws IOException {
    Path cycle = Files.createTempFile("tiderule", ".json");
    Path batch = Files.createTempFile("tiderule", ".ndjson");
    Path cache = Files.createTempDirectory("tiderule");
    Files.write(cycle, InventedSeason.of(10, 2, 0));
    Files.writeString(
        batch,
        Stream.iterate(0, i -> i + 1)
            .limit(BATCH)
            .map(i -> new String(InventedSeason.of(i % 16, 1 + i % 3, 0), StandardCharsets.UTF_8))
            .map(text -> text.replace("\n", " "))
            .collect(Collectors.joining("\n")));
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String jar = api.resolve("target").resolve("tiderule.jar").normalize().toString();
    String launcher = api.resolve("bin").resolve("tiderule").normalize().toString();
    List<String> starts =
        List.of(
            "env",
            "XDG_CACHE_HOME=" + cache,
            "JAVA_HOME=" + System.getProperty("java.home"),
            launcher,
            "advise",
            "-");
    Map<String, Commands.Run> runs = new LinkedHashMap<>();
    runs.put("advise", Commands.median(STARTS, List.of(java, "-jar", jar, "advise", "-"), cycle));
    runs.put("shared", Commands.median(STARTS, starts, cycle));
    runs.put(
        "batch",
        Commands.run(
            List.of(java, "-jar", jar, "batch", batch.toString()), cycle, Path.of("/dev/null")));
    return runs;
  }

  /** How many cycles the batch has. */
  static int batch() {
    return BATCH;
  }

  /**
   * What the posterior costs, and the independent one where it is as accurate, ms, by case; none
   * where the independent one cannot be run here.
   */
  private Map<String, Figures.Pair> posteriors(Tiderule engine) throws IOException {
    Path reference = home.resolve("..").resolve("reference").normalize();
    Path out = Files.createTempFile("tiderule", ".txt");
    Map<String, Figures.Pair> pairs = new LinkedHashMap<>();
    if (!Files.isExecutable(PYTHON)) {
      return pairs;
    }
    Commands.run(
        List.of(PYTHON.toString(), reference.resolve("cost.py").toString()),
        Path.of("/dev/null"),
        out);
    for (String line : Files.readAllLines(out)) {
      String[] words = line.split(" ", -1);
      if (words.length == 3) {
        byte[] file = Files.readAllBytes(reference.resolve("cases").resolve(words[0] + ".json"));
        Double ours = Parts.of(engine, file, WARM_UP / 10, RUNS / 10).get("posterior");
        if (ours != null) {
          pairs.put(words[0], new Figures.Pair(ours, Double.parseDouble(words[2])));
        }
      }
    }
    return pairs;
  }
}
