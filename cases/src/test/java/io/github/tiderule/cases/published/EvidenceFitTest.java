package io.github.tiderule.cases.published;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;

import io.github.tiderule.engine.days.EggModel;
import io.github.tiderule.engine.days.Meeting;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.source.Sources;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * The fit of published results in {@code cases/evidence} beside the engine: its parameter file is
 * what the fit wrote, and the engine's egg model makes of every result what the fit's own does. Its
 * README says what each table holds.
 */
class EvidenceFitTest {

  private static final Path EVIDENCE = evidence();
  private static final EggModel MODEL = new EggModel(Parameters.load());
  private static final Map<String, Double> VALUES = values();
  private static final Map<String, CSVRecord> TRIALS = by("trials.csv", "series");
  private static final Map<String, CSVRecord> PREDICTED = by("predicted.csv", "id");

  /** How far the logs of odds of the trials lie apart, as the fit has it. */
  private static final double FERTILE_APART = 0.5;

  private static final double EGG_APART = 0.4;
  private static final double ARRIVES_APART = 0.7;

  /** Seven points of a Gauss–Hermite rule for a standard normal variable, and their weights. */
  private static final double[] X = {
    -3.750439717725742,
    -2.366759410734541,
    -1.154405394739968,
    0,
    1.154405394739968,
    2.366759410734541,
    3.750439717725742
  };

  private static final double[] W = {
    0.000548268858737,
    0.030757123967586,
    0.240123178605013,
    0.457142857142857,
    0.240123178605013,
    0.030757123967586,
    0.000548268858737
  };

  private static Path evidence() {
    Path here = Path.of("evidence");
    return Files.isDirectory(here) ? here : Path.of("cases", "evidence");
  }

  private static List<CSVRecord> rows(String name) {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader reader = Files.newBufferedReader(EVIDENCE.resolve(name))) {
      return format.parse(reader).getRecords();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Map<String, CSVRecord> by(String name, String key) {
    return rows(name).stream()
        .collect(Collectors.toUnmodifiableMap(row -> row.get(key), Function.identity()));
  }

  private static Map<String, Double> values() {
    return Stream.of("fitted.csv", "fixed.csv")
        .flatMap(name -> rows(name).stream())
        .collect(
            Collectors.toUnmodifiableMap(
                row -> row.get("parameter"), row -> Double.parseDouble(row.get("value"))));
  }

  private static double value(String name) {
    Double value = VALUES.get(name);
    if (value == null) {
      throw new IllegalStateException("not fitted: " + name);
    }
    return value;
  }

  private static double number(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static double aside(CSVRecord row, String column) {
    CSVRecord trial = TRIALS.get(row.get("series"));
    return trial == null ? 0 : number(trial, column);
  }

  private static double shifted(double chance, double byLogOdds) {
    double odds = chance / (1 - chance) * Math.exp(byLogOdds);
    return odds / (1 + odds);
  }

  @Test
  void theParameterFileIsWhatTheFitWrote() {
    Parameters parameters = Parameters.load();
    VALUES.forEach(
        (name, value) -> {
          if (!name.startsWith("pups.")) {
            assertThat(name, parameters.value("eggs." + name), equalTo(value));
          }
        });
    assertThat(parameters.value("eggs.life.fresh"), equalTo(value("life.natural")));
  }

  @Test
  void everyResultHasItsSource() {
    Sources sources = Sources.load();
    List<String> missing =
        rows("results.csv").stream()
            .map(row -> row.get("source"))
            .filter(key -> !sources.contains(key))
            .distinct()
            .toList();
    assertThat(missing, empty());
  }

  /**
   * The fit has more kinds of egg than the engine. The engine promises a share of eggs to within a
   * hundredth; a chance that at least one of so many is met can then be off by as many hundredths.
   */
  @Test
  void theEngineMakesOfEveryResultWhatTheFitDoes() {
    for (CSVRecord row : rows("results.csv")) {
      double fitted = fitted(row);
      double near =
          switch (row.get("measure")) {
            case "litter" -> 0.15;
            case "conceived", "whelped" -> 0.01 * number(row, "eggs");
            default -> 0.03;
          };
      assertThat(row.get("id"), made(row), closeTo(fitted, near));
    }
  }

  private static double fitted(CSVRecord row) {
    CSVRecord predicted = PREDICTED.get(row.get("id"));
    if (predicted == null) {
      throw new IllegalStateException("not predicted: " + row.get("id"));
    }
    return number(predicted, "fitted");
  }

  @Test
  void mostResultsLieWithinTheirInterval() {
    List<String> missed = new ArrayList<>();
    int all = 0;
    for (CSVRecord row : rows("results.csv")) {
      double made = made(row);
      double error =
          row.get("se").isEmpty()
              ? Math.sqrt(made * (1 - made) / number(row, "n"))
              : number(row, "se");
      boolean hit = Math.abs(made - number(row, "value")) <= 1.96 * error;
      all++;
      if (!hit) {
        missed.add(row.get("id"));
      }
      System.out.printf(
          Locale.ROOT,
          "evidence: %-30s published %.3f, fitted %.3f%s%n",
          row.get("id"),
          number(row, "value"),
          made,
          hit ? "" : ", missed");
    }
    System.out.printf("evidence: %d of %d results missed: %s%n", missed.size(), all, missed);
    assertThat(all - missed.size(), greaterThan(3 * all / 4));
  }

  private static double made(CSVRecord row) {
    double[] days =
        Stream.of(row.get("days").split(";")).mapToDouble(Double::parseDouble).toArray();
    return switch (row.get("measure")) {
      case "ripe" ->
          normal(value("ripening-mean"), Math.hypot(value("spread-sd"), value("ripening-sd")))
              .cumulativeProbability(days[0]);
      case "closed" -> MODEL.probabilityClosed(days[0]);
      case "sperm-life" -> outlasts("life." + row.get("semen"), "life.natural-log-sd", days[0]);
      case "egg-life" ->
          (1 - value("life-long-weight")) * outlasts("life-short", "life-short-log-sd", days[0])
              + value("life-long-weight") * outlasts("life-long", "life-long-log-sd", days[0]);
      case "best-day" -> bestDay();
      case "eggs" -> taken(row, days);
      case "litter" -> pups(row, days)[1] / pups(row, days)[0];
      case "conceived" -> conceived(row, days);
      case "whelped" -> value("pups.carried") * conceived(row, days);
      default -> throw new IllegalStateException("no such measure: " + row.get("measure"));
    };
  }

  private static NormalDistribution normal(double mean, double sd) {
    return NormalDistribution.of(mean, sd);
  }

  private static double outlasts(String median, String logSd, double days) {
    return LogNormalDistribution.of(Math.log(value(median)), value(logSd))
        .survivalProbability(days);
  }

  private static Meeting meeting(CSVRecord row) {
    Semen semen = Semen.valueOf(row.get("semen").toUpperCase(Locale.ROOT));
    boolean uterus = row.get("route").equals("uterus");
    Route route =
        uterus ? Route.TRANSCERVICAL : semen == Semen.NATURAL ? Route.NATURAL : Route.VAGINAL;
    return MODEL.meeting(semen, route, 24);
  }

  private static double bestDay() {
    Meeting frozen = MODEL.meeting(Semen.FROZEN, Route.TRANSCERVICAL, 0);
    double sum = 0;
    double all = 0;
    for (double day = 1; day <= 7; day += 0.25) {
      double weight = Math.pow(frozen.share(day), 8);
      sum += weight * day;
      all += weight;
    }
    return sum / all;
  }

  /** Probability that an egg met becomes a pup, before her own fertility. */
  private static double worth(CSVRecord row) {
    double worth = shifted(value("pups.egg." + row.get("semen")), EGG_APART * aside(row, "egg"));
    if (inVagina(row)) {
      worth *= value("pups.vagina");
    }
    if (!row.get("dose").isEmpty()) {
      worth *= Math.min(alive(number(row, "dose")) / alive(150), 1.05);
    }
    if (row.get("motility").equals("poor") || row.get("motility").equals("good")) {
      worth *= value("pups.motility." + row.get("motility"));
    }
    return Math.min(worth, 1);
  }

  private static double alive(double million) {
    return 1 - Math.pow(2, -million / value("pups.dose-half"));
  }

  private static boolean inVagina(CSVRecord row) {
    return row.get("route").equals("vagina") && !row.get("semen").equals("natural");
  }

  private static double conceived(CSVRecord row, double[] days) {
    double arrives =
        inVagina(row)
            ? shifted(value("pups.arrives." + row.get("semen")), ARRIVES_APART * aside(row, "way"))
            : 1;
    return shifted(value("pups.fertile"), FERTILE_APART * aside(row, "fertile"))
        * arrives
        * pups(row, days)[0];
  }

  /** Probability that at least one egg becomes a pup, and the mean number that do. */
  private static double[] pups(CSVRecord row, double[] days) {
    double[] sum = new double[2];
    double eggs = number(row, "eggs");
    for (int x = 0; x < X.length; x++) {
      double share = 0;
      Meeting meeting = meeting(row);
      for (int egg = 0; egg < meeting.kinds().size(); egg++) {
        double missed = 1;
        for (double day : days) {
          missed *= 1 - meeting.met(egg, at(row, day, x));
        }
        share += meeting.kinds().get(egg).weight() * (1 - missed);
      }
      share *= worth(row);
      sum[0] += W[x] * (1 - Math.pow(1 - share, eggs));
      sum[1] += W[x] * eggs * share;
    }
    return sum;
  }

  private static double at(CSVRecord row, double day, int x) {
    return day + aside(row, "zero") * number(row, "zero-sd") + number(row, "scatter") * X[x];
  }

  /** Share of the eggs left that the last dose took. */
  private static double taken(CSVRecord row, double[] days) {
    Meeting meeting = meeting(row);
    double worth = worth(row);
    double taken = 0;
    double left = 0;
    for (int x = 0; x < X.length; x++) {
      for (int egg = 0; egg < meeting.kinds().size(); egg++) {
        double still = W[x] * meeting.kinds().get(egg).weight();
        for (int dose = 0; dose < days.length - 1; dose++) {
          still *= 1 - worth * meeting.met(egg, at(row, days[dose], x));
        }
        left += still;
        taken += still * worth * meeting.met(egg, at(row, days[days.length - 1], x));
      }
    }
    return taken / left;
  }
}
