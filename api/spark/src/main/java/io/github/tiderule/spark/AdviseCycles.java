package io.github.tiderule.spark;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.SparkSession;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The job: cycle files in, answers out, each the one that {@code batch} gives. */
@Command(
    name = "AdviseCycles",
    mixinStandardHelpOptions = true,
    description =
        "Advises for every cycle file of IN and writes OUT/advice and OUT/refused, which must not"
            + " exist yet.")
public final class AdviseCycles implements Callable<Integer> {

  private static final int DONE = 0;
  private static final int FAULT = 1;
  private static final int MISUSE = 2;

  /** How a file is written. */
  enum Format {
    /** One cycle file or answer a line. */
    TEXT,
    /** A table. */
    PARQUET
  }

  @Parameters(index = "0", paramLabel = "IN", description = "A file, a directory or a pattern.")
  private String in = "";

  @Parameters(index = "1", paramLabel = "OUT", description = "A directory.")
  private String out = "";

  @Option(
      names = "--from",
      description = "text or parquet; by default parquet where IN ends in .parquet.")
  private @Nullable Format from;

  @Option(names = "--to", description = "text (the default) or parquet.")
  private Format to = Format.TEXT;

  @Option(
      names = "--column",
      paramLabel = "NAME",
      description =
          "The column of a Parquet file that holds cycle files. By default the only one, or every"
              + " column is a field.")
  private @Nullable String column;

  @Option(
      names = "--task-kilobytes",
      paramLabel = "N",
      defaultValue = "1024",
      description = "How much text one task reads at most (default: ${DEFAULT-VALUE}).")
  private int taskKilobytes;

  @Option(
      names = "--parts",
      paramLabel = "N",
      defaultValue = "200",
      description = "Into how many parts rows of Parquet are split (default: ${DEFAULT-VALUE}).")
  private int parts;

  private AdviseCycles() {}

  /** Runs the job and ends its session; ends the process only where it failed. */
  public static void main(String[] arguments) {
    int status = run(arguments);
    var session = SparkSession.getDefaultSession();
    if (session.isDefined()) {
      session.get().stop();
    }
    if (status != DONE) {
      System.exit(status);
    }
  }

  /** Runs the job and gives its exit status: 0, or 1 for a fault of ours, or 2 for bad usage. */
  static int run(String... arguments) {
    return new CommandLine(new AdviseCycles())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .execute(arguments);
  }

  @Override
  public Integer call() throws IOException {
    SparkSession session = SparkSession.builder().appName("tiderule").getOrCreate();
    Written written;
    try {
      Output output = Output.into(session, out);
      JavaRDD<NumberedAnswer> answers = lines(new Input(session)).map(NumberedAnswer::of);
      written = to == Format.PARQUET ? output.asParquet(answers) : output.asText(answers);
    } catch (Misuse e) {
      System.err.println(e.getMessage());
      return MISUSE;
    }
    System.err.println(written.words());
    return written.faulty() == 0 ? DONE : FAULT;
  }

  private JavaRDD<NumberedLine> lines(Input input) throws Misuse {
    return isParquet()
        ? input.rows(in, column, Math.max(1, parts))
        : input.lines(in, Math.max(1, taskKilobytes) * 1024L);
  }

  private boolean isParquet() {
    return from == null ? in.endsWith(".parquet") : from == Format.PARQUET;
  }
}
