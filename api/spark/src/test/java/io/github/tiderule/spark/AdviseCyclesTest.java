package io.github.tiderule.spark;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.api.command.Program;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Streams;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Holds the job to what {@code batch} answers, byte for byte. */
class AdviseCyclesTest {

  private static final Path DEMONSTRATIONS = Path.of("../../cases/demo");
  private static final String PROBLEMS = "{\"schema\":\"tiderule/problems/1\"";
  private static final int LONGER_THAN_A_CYCLE_FILE = (1 << 20) + 10;

  private static SparkSession session;

  @TempDir private Path directory;

  @BeforeAll
  static void start() {
    session =
        SparkSession.builder()
            .master("local[2]")
            .config("spark.ui.enabled", false)
            .config("spark.sql.shuffle.partitions", 2)
            .config("spark.sql.session.timeZone", "UTC")
            .getOrCreate();
  }

  @AfterAll
  static void stop() {
    session.stop();
  }

  @Test
  void answersAsBatchDoes() throws IOException {
    Path in = write("cycles.ndjson", joined(cycles(), "\n"));

    assertThat(job(in, "text", "--task-kilobytes", "1"), is(0));

    assertThat(lines("text/advice"), is(batch(in)));
    assertThat(lines("text/advice"), hasSize(cycles().size()));
    assertThat(lines("text/refused"), empty());
    assertThat(parts("text/advice"), greaterThan(2L));
  }

  @Test
  void putsBadLinesAsideWithTheirNumbers() throws IOException {
    List<String> cycles = cycles();
    String text =
        String.join(
            "\n",
            "\u00EF\u00BB\u00BF" + latin(cycles.get(0)),
            "",
            "{",
            latin(cycles.get(1)) + "\r",
            " \t\r",
            "{\"schema\":\"tiderule/cycle/1\",\"schema\":\"\u00FF\"}",
            "a\rb",
            "x".repeat(LONGER_THAN_A_CYCLE_FILE),
            latin(cycles.get(2)).replace("observations", "observation"),
            "null",
            latin(cycles.get(3)));
    Path in = Files.write(directory.resolve("mixed.ndjson"), text.getBytes(ISO_8859_1));

    assertThat(job(in, "out", "--task-kilobytes", "100"), is(0));

    List<String> expected = batch(in);
    assertThat(lines("out/advice"), is(only(expected, line -> !line.startsWith(PROBLEMS))));
    assertThat(lines("out/refused"), is(only(expected, line -> line.startsWith(PROBLEMS))));
    assertThat(lines("out/advice"), hasSize(3));
    assertThat(
        lines("out/refused").stream().map(AdviseCyclesTest::number).toList(),
        is(List.of(3, 6, 7, 8, 9, 10)));
  }

  @Test
  void readsADirectoryInTheOrderOfNames() throws IOException {
    List<String> cycles = cycles();
    Path in = Files.createDirectory(directory.resolve("in"));
    write("in/b.ndjson", "[]\n" + joined(cycles.subList(2, 4), "\n"));
    write("in/a.ndjson", joined(cycles.subList(0, 2), "\r\n"));
    write("in/c.ndjson", "");
    write("in/_SUCCESS", "not a cycle file");
    Path whole =
        write(
            "whole.ndjson",
            joined(cycles.subList(0, 2), "\n") + "[]\n" + joined(cycles.subList(2, 4), "\n"));

    assertThat(job(in, "out"), is(0));

    List<String> expected = batch(whole);
    assertThat(lines("out/advice"), is(only(expected, line -> !line.startsWith(PROBLEMS))));
    assertThat(lines("out/refused"), is(only(expected, line -> line.startsWith(PROBLEMS))));
  }

  @Test
  void anEmptyFileGivesNothing() throws IOException {
    List<String> texts = List.of("", "\n", "\uFEFF", "\uFEFF \r\n\n");
    for (int i = 0; i < texts.size(); i++) {
      Path in = write("empty.ndjson", texts.get(i));
      String out = "out" + i;
      assertThat(job(in, out), is(0));
      assertThat(lines(out + "/advice"), empty());
      assertThat(lines(out + "/refused"), empty());
      assertThat(batch(in), empty());
    }
  }

  @Test
  void readsAColumnOfTextFromParquet() throws IOException {
    List<String> texts = new ArrayList<>(cycles());
    texts.add(2, "{\"schema\": 1}");
    texts.add(null);
    Dataset<Row> table = session.createDataset(texts, Encoders.STRING()).toDF("season").coalesce(1);
    table.write().parquet(directory.resolve("cycles.parquet").toString());
    Path in =
        write("same.ndjson", joined(texts.stream().map(t -> t == null ? "" : t).toList(), "\n"));

    assertThat(job(directory.resolve("cycles.parquet"), "out", "--parts", "3"), is(0));

    List<String> expected = batch(in);
    assertThat(lines("out/advice"), is(only(expected, line -> !line.startsWith(PROBLEMS))));
    assertThat(lines("out/refused"), is(only(expected, line -> line.startsWith(PROBLEMS))));
    assertThat(lines("out/refused"), hasSize(1));
  }

  @Test
  void readsANamedColumnOfManyFiles() throws IOException {
    Dataset<Row> table =
        session
            .createDataset(cycles(), Encoders.STRING())
            .toDF("season")
            .selectExpr("length(season) as size", "cast(season as binary) as season");
    table.repartition(3).write().parquet(directory.resolve("many").toString());
    List<String> inOrder =
        session
            .read()
            .parquet(directory.resolve("many").toString())
            .selectExpr("cast(season as string)", "_metadata.file_path", "_metadata.row_index")
            .orderBy("file_path", "row_index")
            .select("season")
            .as(Encoders.STRING())
            .collectAsList();
    Path in = write("same.ndjson", joined(inOrder, "\n"));

    assertThat(
        job(
            directory.resolve("many"),
            "out",
            "--from",
            "parquet",
            "--column",
            "season",
            "--parts",
            "3"),
        is(0));

    assertThat(lines("out/advice"), is(batch(in)));
  }

  @Test
  void readsTypedColumns() throws IOException {
    Path in = write("cycles.ndjson", joined(cycles(), "\n"));
    session
        .read()
        .json(in.toString())
        .coalesce(1)
        .write()
        .parquet(directory.resolve("typed.parquet").toString());

    assertThat(job(directory.resolve("typed.parquet"), "out", "--parts", "3"), is(0));

    assertThat(lines("out/advice"), is(batch(in)));
    assertThat(lines("out/refused"), empty());
  }

  @Test
  void writesParquet() throws IOException {
    List<String> texts = new ArrayList<>(cycles());
    texts.add(1, "{}");
    Path in = write("cycles.ndjson", joined(texts, "\n"));

    assertThat(job(in, "out", "--to", "parquet", "--task-kilobytes", "1"), is(0));

    List<String> written =
        session
            .read()
            .parquet(
                directory.resolve("out/advice").toString(),
                directory.resolve("out/refused").toString())
            .orderBy("line")
            .select("answer")
            .as(Encoders.STRING())
            .collectAsList();
    assertThat(written, is(batch(in)));
  }

  @Test
  void keepsEarlierAnswers() throws IOException {
    Path in = write("cycles.ndjson", cycles().get(0));
    Files.createDirectories(directory.resolve("out/refused"));

    assertThat(job(in, "out"), is(2));

    assertThat(Files.exists(directory.resolve("out/advice")), is(false));
  }

  @Test
  void refusesAColumnThatIsNotThere() {
    session
        .range(2)
        .toDF("count")
        .write()
        .mode(SaveMode.Overwrite)
        .parquet(directory.resolve("numbers.parquet").toString());

    Path in = directory.resolve("numbers.parquet");
    assertThat(job(in, "out", "--column", "cycle"), is(2));
    assertThat(job(in, "out", "--column", "count"), is(2));
    assertThat(job(in, "out", "--parts", "2"), is(0));
  }

  private int job(Path in, String out, String... options) {
    List<String> arguments =
        new ArrayList<>(List.of(in.toString(), directory.resolve(out).toString()));
    arguments.addAll(List.of(options));
    return AdviseCycles.run(arguments.toArray(String[]::new));
  }

  /** What {@code batch} answers, a line each. */
  private static List<String> batch(Path in) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Streams streams = new Streams(new ByteArrayInputStream(new byte[0]), out, err);
    int status = new Program(streams, Engine.real()).run("batch", in.toString());
    assertThat(err.toString(UTF_8), status, not(ExitStatus.FAULT));
    return out.toString(UTF_8).lines().toList();
  }

  private List<String> lines(String output) throws IOException {
    try (Stream<Path> files = Files.list(directory.resolve(output))) {
      List<String> lines = new ArrayList<>();
      for (Path file : files.filter(AdviseCyclesTest::isPart).sorted().toList()) {
        lines.addAll(Files.readAllLines(file));
      }
      return lines;
    }
  }

  private long parts(String output) throws IOException {
    try (Stream<Path> files = Files.list(directory.resolve(output))) {
      return files.filter(AdviseCyclesTest::isPart).count();
    }
  }

  private static boolean isPart(Path file) {
    return file.getFileName().toString().startsWith("part-");
  }

  private static List<String> only(List<String> lines, Predicate<String> which) {
    return lines.stream().filter(which).toList();
  }

  private static int number(String problems) {
    return Integer.parseInt(problems.replaceFirst("^.*?\"line\":(\\d+).*$", "$1"));
  }

  /** The demonstrations, one a line. */
  private static List<String> cycles() throws IOException {
    try (Stream<Path> files = Files.list(DEMONSTRATIONS)) {
      List<String> cycles = new ArrayList<>();
      for (Path file : files.filter(f -> f.toString().endsWith(".json")).sorted().toList()) {
        cycles.add(Files.readString(file).replace('\r', ' ').replace('\n', ' '));
      }
      return cycles;
    }
  }

  private static String latin(String text) {
    return new String(text.getBytes(UTF_8), ISO_8859_1);
  }

  private static String joined(List<String> lines, String end) {
    return lines.isEmpty() ? "" : String.join(end, lines) + end;
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(directory.resolve(name), text);
  }
}
