package io.github.tiderule.cases.pairs;

import io.github.tiderule.engine.Tiderule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Writes how alike two methods are dated: {@code PairedReport [DIRECTORY [SEASONS [SEED]]]}. */
public final class PairedReport {

  private PairedReport() {}

  /**
   * Puts every published set through the engine and writes {@code paired-sets.md}.
   *
   * @param args directory, by default {@code cases/report}; seasons per set, by default 200; seed,
   *     by default 1
   * @throws IOException if the file cannot be written
   */
  public static void main(String[] args) throws IOException {
    Path directory = Path.of(args.length > 0 ? args[0] : "cases/report");
    int count = args.length > 1 ? Integer.parseInt(args[1]) : 200;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 1;
    Tiderule engine = Tiderule.create();
    List<String> lines = new ArrayList<>();
    lines.add("# The same blood by two methods");
    lines.add("");
    lines.add(
        "Invented seasons, "
            + count
            + " per set, seed "
            + seed
            + ", read by the first method and, by the published relation, by the second, every"
            + " second day to three days past ovulation. Distance between the two medians of"
            + " ovulation in days; same day: the same first recommended day, or none both times."
            + " Held with a median of at most 0.3 d and the same day in 90 %.");
    lines.add("");
    lines.add("Make it again: see cases/report/README.md.");
    lines.add("");
    lines.add("| set | source | second = | apart | 90th pct | later | same day | |");
    lines.add("|---|---|---|---|---|---|---|---|");
    for (PairedSet set : PairedSet.read(Path.of("cases/published/pairs.csv"))) {
      PairedScore score = PairedScore.of(engine, set, seed, count);
      lines.add(
          String.format(
              Locale.ROOT,
              "| %s | %s | %.2f + %.3f × first | %.2f | %.2f | %+.2f | %.0f %% | %s |",
              set.name(),
              set.source(),
              set.intercept(),
              set.slope(),
              score.apart(),
              score.p90(),
              score.shift(),
              100 * score.sameDay(),
              score.held() ? "held" : "missed"));
    }
    Files.createDirectories(directory);
    Files.writeString(directory.resolve("paired-sets.md"), String.join("\n", lines) + "\n");
  }
}
