package io.github.tiderule.cases.plans;

import io.github.tiderule.engine.Tiderule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Writes the report of plans on cohorts: {@code PlanReport [DIRECTORY [SEASONS [SEED]]]}. */
public final class PlanReport {

  private static final String NAME = "cohort-plans";
  private final List<String> markdown = new ArrayList<>();
  private final List<String> csv = new ArrayList<>();
  private final Map<EggLaw.World, List<PlanScore>> worlds = new EnumMap<>(EggLaw.World.class);
  private final long seed;

  private PlanReport(long seed) {
    this.seed = seed;
  }

  /**
   * Breeds every row and writes {@code cohort-plans.md} and {@code .csv}.
   *
   * @param args directory, by default {@code cases/report}; seasons per row, by default 300; seed,
   *     by default 1
   * @throws IOException if the files cannot be written
   */
  public static void main(String[] args) throws IOException {
    Path directory = Path.of(args.length > 0 ? args[0] : "cases/report");
    int count = args.length > 1 ? Integer.parseInt(args[1]) : 300;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 1;
    PlanReport report = new PlanReport(seed);
    PlanStudy study = new PlanStudy(Tiderule.create(), seed);
    for (Row row : Row.values()) {
      report.row(row, study.breed(row, count));
    }
    report.write(count);
    Files.createDirectories(directory);
    Files.writeString(directory.resolve(NAME + ".md"), String.join("\n", report.markdown) + "\n");
    Files.writeString(directory.resolve(NAME + ".csv"), String.join("\n", report.csv) + "\n");
  }

  private void row(Row row, List<PlanStudy.Bred> seasons) {
    for (EggLaw.World world : EggLaw.World.values()) {
      PlanScore score = PlanScore.of(row, seasons, EggLaw.of(seed, world));
      worlds.computeIfAbsent(world, any -> new ArrayList<>()).add(score);
    }
  }

  private void write(int count) {
    heading(count);
    List<PlanScore> scores = worlds.getOrDefault(EggLaw.World.MIXED, List.of());
    scores.forEach(this::shares);
    markdown.add("");
    markdown.add(
        "Whole curve: one who knows her whole progesterone curve without error and all laws, but not"
            + " her ovulation. No planner that tests progesterone alone meets more with one dose; one"
            + " that has LH tested too may.");
    markdown.add("");
    markdown.add("## World by world");
    markdown.add("");
    markdown.add(
        "What is published leaves open how long eggs live and when thawed sperm finds them ready. The"
            + " seasons and doses are the same in each world; only what the doses meet differs. Regret:"
            + " eggs in 100 met less than by the knowing plan.");
    worlds.forEach(this::world);
    markdown.add("");
    markdown.add("## Tests and times");
    markdown.add("");
    markdown.add(
        "| row | our tests | with LH on the same blood | every 2nd day, until above 5 | until proven"
            + " | days from ovulation to our first dose (SD) | doses given | seasons let pass |");
    markdown.add("|---|---|---|---|---|---|---|---|");
    scores.forEach(this::testsAndTimes);
    markdown.add("");
    markdown.add("## What is missed");
    markdown.add("");
    List<String> missed = new ArrayList<>();
    worlds.forEach((world, all) -> all.forEach(score -> missed.addAll(missed(world, score))));
    scores.forEach(score -> missed.addAll(tests(score.row().words(), score)));
    markdown.addAll(missed.isEmpty() ? List.of("Nothing.") : missed);
  }

  private void heading(int count) {
    markdown.add("# Simulated cohorts: the share of her eggs that is met");
    markdown.add("");
    markdown.add(
        "Invented females, each season played through day by day: our engine is asked, the test it"
            + " advises is drawn and known 8 hours later, and the plan is committed to at its last"
            + " moment (chilled semen ordered by 14:00 the day before it is used, the clinic told"
            + " by 18:00 the day before frozen semen is used, natural and fresh on the day). "
            + count
            + " ovulating seasons per row, seed "
            + seed
            + ". Eggs and sperm follow laws of their own, not the engine's model; in the first table"
            + " thawed sperm finds the eggs ready late in every second season.");
    markdown.add("");
    markdown.add(
        "Knowing: the best doses, in the same windows and parcels, of one who knows the true"
            + " ovulation. Fixed days count from the noted first blood; one dose takes the middle"
            + " day, two the last two. Above 5: tested every second day from day 5; the drawing of"
            + " the first value above 5 and two days, for frozen semen three; further doses a day"
            + " (natural: two days) apart.");
    markdown.add("");
    markdown.add(
        "LH: tested for on the same blood; the first test with LH high and progesterone above 1, and five"
            + " or six days for frozen semen, one less for the others; without one, the first value above"
            + " 5 and three or four days (two).");
    markdown.add("");
    markdown.add("Make it again: see cases/report/README.md.");
    markdown.add("");
    StringBuilder head = new StringBuilder("| row | ours | knowing | ours / knowing | target |");
    for (Thumb thumb : Thumb.values()) {
      head.append(' ').append(thumb.words()).append(" |");
    }
    markdown.add(head + " whole curve |");
    markdown.add("|---|---|---|---|---|" + "---|".repeat(Thumb.values().length) + "---|");
    csv.add(
        "world,row,seasons,ours,knowing,ratio,target,days91113,days101214,aboveFive,aboveFiveTwo,lhFive,lhSix,"
            + "wholeCurve,tests,alsoLh,everySecondDayUntilAboveFive,everySecondDayUntilProven,firstAfterOvulation,"
            + "firstAfterOvulationSd,doses,letPass");
  }

  private void shares(PlanScore score) {
    StringBuilder line =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "| %s | %.3f | %.3f | %.3f | %.2f %s |",
                score.row().words(),
                score.ours(),
                score.knowing(),
                score.ratio(),
                score.row().target(),
                score.targetMet() ? "met" : "**missed**"));
    score.thumbs().forEach(thumb -> line.append(String.format(Locale.ROOT, " %.3f |", thumb)));
    markdown.add(
        line
            + (Double.isNaN(score.curve())
                ? " – |"
                : String.format(Locale.ROOT, " %.3f |", score.curve())));
  }

  private void world(EggLaw.World world, List<PlanScore> scores) {
    markdown.add("");
    markdown.add("### " + world.words());
    markdown.add("");
    StringBuilder head =
        new StringBuilder("| row | knowing | ours / knowing | aim | regret: ours |");
    for (Thumb thumb : Thumb.values()) {
      head.append(' ').append(thumb.words()).append(" |");
    }
    markdown.add(head.toString());
    markdown.add("|---|---|---|---|---|" + "---|".repeat(Thumb.values().length));
    for (PlanScore score : scores) {
      StringBuilder line =
          new StringBuilder(
              String.format(
                  Locale.ROOT,
                  "| %s | %.3f | %.3f | %.2f %s | %.1f |",
                  score.row().words(),
                  score.knowing(),
                  score.ratio(),
                  score.row().target(),
                  score.targetMet() ? "met" : "**missed**",
                  100 * (score.knowing() - score.ours())));
      score
          .thumbs()
          .forEach(
              thumb ->
                  line.append(
                      String.format(Locale.ROOT, " %.1f |", 100 * (score.knowing() - thumb))));
      markdown.add(line.toString());
      csv(world, score);
    }
  }

  private void csv(EggLaw.World world, PlanScore score) {
    StringBuilder thumbs = new StringBuilder();
    score.thumbs().forEach(thumb -> thumbs.append(String.format(Locale.ROOT, "%.4f,", thumb)));
    csv.add(
        String.format(
            Locale.ROOT,
            "\"%s\",\"%s\",%d,%.4f,%.4f,%.4f,%.2f,%s%s,%.2f,%.2f,%.2f,%.2f,%.3f,%.3f,%.2f,%d",
            world.words(),
            score.row().words(),
            score.seasons(),
            score.ours(),
            score.knowing(),
            score.ratio(),
            score.row().target(),
            thumbs,
            Double.isNaN(score.curve()) ? "" : String.format(Locale.ROOT, "%.4f", score.curve()),
            score.tests(),
            score.alsoLh(),
            score.untilPastFive(),
            score.untilProven(),
            score.firstAfter(),
            score.firstSd(),
            score.doses(),
            score.never()));
  }

  private void testsAndTimes(PlanScore score) {
    markdown.add(
        String.format(
            Locale.ROOT,
            "| %s | %.2f | %.2f | %.2f | %.2f | %.2f (%.2f) | %.2f | %d |",
            score.row().words(),
            score.tests(),
            score.alsoLh(),
            score.untilPastFive(),
            score.untilProven(),
            score.firstAfter(),
            score.firstSd(),
            score.doses(),
            score.never()));
  }

  private static List<String> missed(EggLaw.World world, PlanScore score) {
    List<String> missed = new ArrayList<>();
    String row = world.words() + ", " + score.row().words();
    if (!score.targetMet()) {
      missed.add(
          String.format(
              Locale.ROOT,
              "- %s: %.3f of the knowing plan, %.2f is aimed at.%s",
              row,
              score.ratio(),
              score.row().target(),
              Double.isNaN(score.curve())
                  ? ""
                  : String.format(
                      Locale.ROOT,
                      " One who knows the whole curve and this world comes to %.3f.",
                      score.curve() / score.knowing())));
    }
    Iterator<Double> met = score.thumbs().iterator();
    for (Thumb thumb : Thumb.values()) {
      if (met.next() >= score.ours()) {
        missed.add(
            "- " + row + ": the rule of thumb \"" + thumb.words() + "\" meets as many eggs.");
      }
    }
    return missed;
  }

  private static List<String> tests(String row, PlanScore score) {
    if (score.tests() > score.untilProven()) {
      return List.of("- " + row + ": more tests than every second day until a proven rise.");
    }
    return score.tests() > score.untilPastFive()
        ? List.of("- " + row + ": more tests than every second day until the first value above 5.")
        : List.of();
  }
}
