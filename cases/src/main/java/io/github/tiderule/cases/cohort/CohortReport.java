package io.github.tiderule.cases.cohort;

import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Writes the cohort report: {@code CohortReport [DIRECTORY [SEASONS [SEED]]]}. */
public final class CohortReport {

  private static final String NAME = "cohort-timeline";

  private final List<String> markdown = new ArrayList<>();
  private final List<String> csv = new ArrayList<>();

  private CohortReport() {}

  /**
   * Runs every habit and writes {@code cohort-timeline.md} and {@code .csv}.
   *
   * @param args directory, by default {@code cases/report}; seasons per habit, by default 1000;
   *     seed, by default 1
   * @throws IOException if the files cannot be written
   */
  public static void main(String[] args) throws IOException {
    Path directory = Path.of(args.length > 0 ? args[0] : "cases/report");
    int count = args.length > 1 ? Integer.parseInt(args[1]) : 1000;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 1;
    CohortReport report = new CohortReport();
    report.run(new Study(Tiderule.create(), seed), count, seed);
    Files.createDirectories(directory);
    Files.writeString(directory.resolve(NAME + ".md"), String.join("\n", report.markdown) + "\n");
    Files.writeString(directory.resolve(NAME + ".csv"), String.join("\n", report.csv) + "\n");
  }

  /** Every habit of the report. */
  static List<SamplingHabit> habits() {
    List<SamplingHabit> habits = new ArrayList<>();
    for (AdvisedHabit.Until until : AdvisedHabit.Until.values()) {
      habits.add(new AdvisedHabit(false, until));
      habits.add(new AdvisedHabit(true, until));
    }
    for (int every = 3; every >= 1; every--) {
      habits.add(new SteadyHabit(every, false, 1));
      habits.add(new SteadyHabit(every, true, 1));
      habits.add(new SteadyHabit(every, false, 2));
    }
    habits.add(new SteadyHabit(2, true, 2));
    habits.add(new OneValueHabit(2, 3, true, false));
    habits.add(new OneValueHabit(10, Double.POSITIVE_INFINITY, false, false));
    habits.add(new OneValueHabit(10, Double.POSITIVE_INFINITY, false, true));
    return habits;
  }

  private void run(Study study, int count, long seed) {
    heading(count, seed);
    List<List<Answer>> byMethod = new ArrayList<>();
    for (SamplingHabit habit : habits()) {
      List<Answer> answers = study.answers(study.seasons(habit, count));
      row(habit.words(), answers);
      if (habit instanceof AdvisedHabit advised
          && advised.until() == AdvisedHabit.Until.PROVEN
          && !advised.smears()) {
        Stream.of(Method.RIA, Method.ECLIA, Method.CLIA, Method.FLUORESCENCE, Method.DRY_SLIDE)
            .forEach(method -> byMethod.add(of(method, answers)));
      }
    }
    oracle(study, count);
    markdown.add("");
    markdown.add("The row \"as advised, after a proven rise\" by the laboratory's method:");
    markdown.add("");
    tableHead();
    byMethod.forEach(answers -> row("… " + method(answers.get(0)).word(), answers));
  }

  private void oracle(Study study, int count) {
    SamplingHabit anyone = new SteadyHabit(3, false, 1);
    Score best = Score.ofOracle(study.seasons(anyone, count));
    markdown.add("");
    markdown.add(
        String.format(
            Locale.ROOT,
            "Bound: one who knew each female's whole progesterone curve without error, and the laws"
                + " the females are drawn by, would still err by %.2f days in the median and %.2f in"
                + " the 90th percentile, because females ovulate at different levels.",
            best.median(),
            best.p90()));
    csv.add(
        String.format(
            Locale.ROOT,
            "\"bound: whole curve known\",%d,%.4f,%.4f,%.4f,,,,,,,,,,",
            best.count(),
            best.median(),
            best.p90(),
            best.bias()));
  }

  private static List<Answer> of(Method method, List<Answer> answers) {
    return answers.stream().filter(answer -> method(answer) == method).toList();
  }

  private static Method method(Answer answer) {
    return answer.season().observations().get(0) instanceof Progesterone p
        ? p.method()
        : Method.UNKNOWN;
  }

  private void heading(int count, long seed) {
    markdown.add("# Simulated cohorts: the day of ovulation");
    markdown.add("");
    markdown.add(
        "Invented females, drawn by a generator that is not the engine's model (other curves,"
            + " heavier tails, gross errors). "
            + count
            + " ovulating seasons per habit, seed "
            + seed
            + ". Errors in days, of the median against the true ovulation; bias is the mean error,"
            + " positive for too late; held is the share of intervals with the truth inside.");
    markdown.add("");
    markdown.add(
        "Day 12: noon of day 12 after the noted first blood. Past 5: when a value first passes"
            + " 5 ng/mL; the share in brackets is how often that has happened when the engine is"
            + " asked. The last two columns are the engine's errors in those same seasons.");
    markdown.add("");
    markdown.add("Make it again: see cases/report/README.md.");
    markdown.add("");
    tableHead();
    csv.add(
        "habit,seasons,medianError,p90Error,bias,held50,held90,width90,"
            + "dayTwelveMedian,dayTwelveP90,pastFiveShare,pastFiveMedian,pastFiveP90,"
            + "engineWherePastFiveMedian,engineWherePastFiveP90");
  }

  private void tableHead() {
    markdown.add(
        "| habit | N | median error | 90th pct | bias | 50 % held | 90 % held | 90 % width |"
            + " day 12: median | 90th | past 5: median | 90th | engine there: median | 90th |");
    markdown.add("|---|---|---|---|---|---|---|---|---|---|---|---|---|---|");
  }

  private void row(String words, List<Answer> answers) {
    Score engine = Score.ofEngine(answers);
    Score twelve = Score.ofRule(answers, Season::dayTwelve);
    Score five = Score.ofRule(answers, Season::firstPastFive);
    double share = five.count() / (double) answers.size();
    Score there =
        Score.ofEngine(
            answers.stream().filter(a -> a.season().firstPastFive().isPresent()).toList());
    markdown.add(
        String.format(
            Locale.ROOT,
            "| %s | %d | %.2f | %.2f | %+.2f | %.1f %% | %.1f %% | %.2f | %s | %s | %s | %s | %s | %s |",
            words,
            engine.count(),
            engine.median(),
            engine.p90(),
            engine.bias(),
            100 * Score.heldByHalf(answers),
            100 * Score.heldByNineTenths(answers),
            Score.meanWidth(answers),
            days(twelve.median()),
            days(twelve.p90()),
            days(five.median())
                + (share < 1 ? String.format(Locale.ROOT, " (%.0f %%)", 100 * share) : ""),
            days(five.p90()),
            days(there.median()),
            days(there.p90())));
    csv.add(
        String.format(
            Locale.ROOT,
            "\"%s\",%d,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f",
            words,
            engine.count(),
            engine.median(),
            engine.p90(),
            engine.bias(),
            Score.heldByHalf(answers),
            Score.heldByNineTenths(answers),
            Score.meanWidth(answers),
            twelve.median(),
            twelve.p90(),
            share,
            five.median(),
            five.p90(),
            there.median(),
            there.p90()));
  }

  private static String days(double days) {
    return Double.isNaN(days) ? "–" : String.format(Locale.ROOT, "%.2f", days);
  }
}
