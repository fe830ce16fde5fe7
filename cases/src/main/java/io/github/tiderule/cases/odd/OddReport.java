package io.github.tiderule.cases.odd;

import io.github.tiderule.engine.Tiderule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Writes the report of odd seasons: {@code OddReport [DIRECTORY [SEASONS [SEED]]]}. */
public final class OddReport {

  private static final String NAME = "odd-seasons";
  private static final double AIM = 0.02;

  private static final List<Predicate<Verdict>> FAULTS =
      List.of(
          Verdict::over,
          Verdict::confident,
          Verdict::falseProof,
          Verdict::harmfulSlip,
          Verdict::doseInVain,
          Verdict::wrong);

  private static final List<Predicate<Verdict>> AT_FIRST =
      List.of(
          Verdict::overAtOnce,
          Verdict::firmOutside,
          Verdict::slipUnnoticed,
          Verdict::inVainAtFirst,
          Verdict::wrongAtFirst);

  private final List<String> markdown = new ArrayList<>();
  private final List<String> csv = new ArrayList<>();

  private OddReport() {}

  /**
   * Asks about every kind and writes {@code odd-seasons.md} and {@code .csv}.
   *
   * @param args directory, by default {@code cases/report}; seasons per kind, by default 200; seed,
   *     by default 1
   * @throws IOException if the files cannot be written
   */
  public static void main(String[] args) throws IOException {
    Path directory = Path.of(args.length > 0 ? args[0] : "cases/report");
    int count = args.length > 1 ? Integer.parseInt(args[1]) : 200;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 1;
    OddStudy study = new OddStudy(Tiderule.create(), seed);
    OddReport report = new OddReport();
    List<KindScore> scores = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      scores.add(study.score(kind, count));
      System.err.println(kind.words());
    }
    report.write(scores, count, seed);
    Files.createDirectories(directory);
    Files.writeString(directory.resolve(NAME + ".md"), String.join("\n", report.markdown) + "\n");
    Files.writeString(directory.resolve(NAME + ".csv"), String.join("\n", report.csv) + "\n");
  }

  private void write(List<KindScore> scores, int count, long seed) {
    markdown.add("# Odd seasons: how often the answer is confidently wrong");
    markdown.add("");
    markdown.add(
        "Invented females whose season leaves the textbook in one way each, by a law of progesterone"
            + " that is not the engine's model. "
            + count
            + " seasons a kind, seed "
            + seed
            + "; asked on the evening of every result, with natural, chilled and frozen semen in"
            + " turn. Shares of seasons, per cent, in which it happens on any evening.");
    markdown.add("");
    markdown.add(
        "Over: told over while a dose given from the next morning on, or as soon as it can be there,"
            + " would meet half her eggs, or before the true season."
            + " Interval: ovulation told within four days (nine times in ten), no doubt told, nor that"
            + " all rests on one value, and the"
            + " truth more than a day outside; where she does not ovulate, told as past once her level"
            + " has not risen for two days."
            + " False proof: ovulation called proven, and it comes more than a day later"
            + " or never. Slip: it moves the plan by more than a day, nobody asks, it is not the value"
            + " on which all is told to rest, and it makes the answer act, or keeps it from acting: to"
            + " breed, to book, or to give the season up. In vain: the"
            + " only dose is to be given, booked or ordered before the next result, on less than a"
            + " tenth of her eggs; where she does not ovulate, once her level has not risen for two"
            + " days. Any: one of these. Doubt: something is asked, held, odd or for a"
            + " vet, on any evening, and on the last. Answers: of all answers with an interval and no"
            + " doubt, however wide, those with the truth more than a day outside.");
    markdown.add("");
    markdown.add(
        "Four of these were counted more widely at first, and stand so in the second table. Over: of a"
            + " dose given at eight in the evening, the hour of asking, which nobody gives; a mating on"
            + " the next morning is the first that is left. Interval: also where the"
            + " answer says that its days rest on one value that a later one has to bear out, and for"
            + " a season without ovulation also while her level still rises, when it is the level of any"
            + " season and ovulation the right forecast. Slip: also where a plan of days ahead is moved"
            + " and the answer is to test again first, which no evening can tell from a true value."
            + " In vain: also of a season without ovulation while her level still rises, when to"
            + " order is right by all that can be known. And none of them counted as a doubt that"
            + " she is told that her results do not fit together, and to check each of them against"
            + " its report.");
    markdown.add("");
    markdown.add("Make it again: see cases/report/README.md. Above 2 % stands in bold.");
    markdown.add("");
    markdown.add(
        "| kind | over | interval | false proof | slip | in vain | any | doubt | at last | answers"
            + " outside |");
    markdown.add("|---|---|---|---|---|---|---|---|---|---|");
    csv.add(
        "kind,seasons,answers,over,interval,falseProof,slip,inVain,any,doubt,doubtAtLast,"
            + "answersOutside,overAtFirst,intervalAtFirst,slipAtFirst,inVainAtFirst,anyAtFirst");
    scores.forEach(this::row);
    List<KindScore> odd = scores.stream().filter(score -> score.kind() != Kind.ORDINARY).toList();
    markdown.add(together("All odd kinds together", odd, Verdict::wrong));
    markdown.add("");
    markdown.add("Counted as at first:");
    markdown.add("");
    markdown.add("| kind | over | interval | slip | in vain | any |");
    markdown.add("|---|---|---|---|---|---|");
    scores.forEach(
        score -> markdown.add("| " + score.kind().words() + " |" + shares(score, AT_FIRST)));
    markdown.add(
        together("All odd kinds together, counted as at first", odd, Verdict::wrongAtFirst));
  }

  private static String together(String what, List<KindScore> odd, Predicate<Verdict> is) {
    long wrong = odd.stream().mapToLong(score -> score.count(is)).sum();
    int of = odd.stream().mapToInt(KindScore::count).sum();
    return String.format(
        Locale.ROOT,
        "%n%s: %d of %d seasons confidently wrong (%.1f %%).",
        what,
        wrong,
        of,
        100.0 * wrong / of);
  }

  private static String shares(KindScore score, List<Predicate<Verdict>> faults) {
    return faults.stream()
        .map(score::share)
        .map(
            share ->
                String.format(Locale.ROOT, share > AIM ? " **%.1f** |" : " %.1f |", 100 * share))
        .collect(Collectors.joining());
  }

  private void row(KindScore score) {
    StringBuilder line =
        new StringBuilder("| " + score.kind().words() + " |" + shares(score, FAULTS));
    StringBuilder values =
        new StringBuilder(
            "\"" + score.kind().words() + "\"," + score.count() + "," + score.answers());
    FAULTS.forEach(fault -> values.append(String.format(Locale.ROOT, ",%.4f", score.share(fault))));
    boolean alarmed = score.kind() == Kind.ORDINARY && score.share(Verdict::doubt) > AIM;
    line.append(
        String.format(
            Locale.ROOT,
            alarmed ? " **%.1f** | %.1f | %.1f |" : " %.1f | %.1f | %.1f |",
            100 * score.share(Verdict::doubt),
            100 * score.doubtedAtLast(),
            100 * score.outsideOfDated()));
    values.append(
        String.format(
            Locale.ROOT,
            ",%.4f,%.4f,%.4f",
            score.share(Verdict::doubt),
            score.doubtedAtLast(),
            score.outsideOfDated()));
    AT_FIRST.forEach(
        fault -> values.append(String.format(Locale.ROOT, ",%.4f", score.share(fault))));
    markdown.add(line.toString());
    csv.add(values.toString());
  }
}
