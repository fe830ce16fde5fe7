package io.github.tiderule.cases.plans;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.cases.Nightly;
import io.github.tiderule.engine.Tiderule;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * A small cohort bred by our plans, drawn anew by the same seed each time; {@code cohort-plans.md}
 * has the large one. Shares of a season scatter, so that the mean of a small cohort is bounded a
 * little below what the large one shows.
 */
class PlanCohortTest {

  private static final int SEASONS = Nightly.of(12, 30);
  private static final long SEED = 1;
  private static final Map<EggLaw.World, Map<Row, PlanScore>> SCORES =
      new EnumMap<>(EggLaw.World.class);
  private static final Map<Row, List<PlanStudy.Bred>> SEASONS_OF = new EnumMap<>(Row.class);

  /** Luck of a small cohort; of thirty seasons it is a twentieth. */
  private static final double LUCK = 0.05 * Math.sqrt(30.0 / SEASONS);

  /** By so many tests the means of two small cohorts differ by chance; of thirty a sixth. */
  private static final double SCATTER = Math.sqrt(30.0 / SEASONS) / 6;

  @BeforeAll
  static void breed() {
    PlanStudy study = new PlanStudy(Tiderule.create(), SEED);
    for (Row row : Row.values()) {
      List<PlanStudy.Bred> seasons = study.breed(row, SEASONS);
      SEASONS_OF.put(row, seasons);
      for (EggLaw.World world : EggLaw.World.values()) {
        SCORES
            .computeIfAbsent(world, any -> new EnumMap<>(Row.class))
            .put(row, PlanScore.of(row, seasons, EggLaw.of(SEED, world)));
      }
    }
  }

  private static PlanScore score(Row row) {
    return score(EggLaw.World.MIXED, row);
  }

  private static PlanScore score(EggLaw.World world, Row row) {
    PlanScore score = SCORES.getOrDefault(world, Map.of()).get(row);
    if (score == null) {
      throw new IllegalStateException("no score of " + row);
    }
    return score;
  }

  /** What is aimed at, or where the large cohort shows less, that, less luck; in every world. */
  @ParameterizedTest
  @EnumSource(Row.class)
  void meetsNearlyWhatTheKnowingPlanMeets(Row row) {
    for (EggLaw.World world : EggLaw.World.values()) {
      double least = Math.min(row.target(), reported(world, row));
      assertThat(world + " " + row, score(world, row).ratio(), greaterThan(least - LUCK));
    }
  }

  /** The ratio of the large cohort, as it stands in the report. */
  private static double reported(EggLaw.World world, Row row) {
    Path here = Path.of("report", "cohort-plans.csv");
    Path report = Files.exists(here) ? here : Path.of("cases").resolve(here);
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader reader = Files.newBufferedReader(report)) {
      return format.parse(reader).getRecords().stream()
          .filter(line -> line.get("world").equals(world.words()))
          .filter(line -> line.get("row").equals(row.words()))
          .mapToDouble(line -> Double.parseDouble(line.get("ratio")))
          .findFirst()
          .orElseThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * In every world. Where LH is tested on every second day's blood, rules of thumb come close to
   * the plan for semen that lives for days, and a small cohort may fall short of them by luck; the
   * report says where the large one does.
   */
  @ParameterizedTest
  @EnumSource(Row.class)
  void meetsMoreThanEveryRuleOfThumb(Row row) {
    for (EggLaw.World world : EggLaw.World.values()) {
      Iterator<Double> met = score(world, row).thumbs().iterator();
      for (Thumb thumb : Thumb.values()) {
        boolean byLh = thumb == Thumb.LH_FIVE || thumb == Thumb.LH_SIX;
        assertThat(
            world + " " + row + " " + thumb.words(),
            score(world, row).ours(),
            greaterThan(met.next() - (byLh ? LUCK : 0)));
      }
    }
  }

  /** Nobody beats the one who knows the ovulation, in any season. */
  @ParameterizedTest
  @EnumSource(Row.class)
  void theKnowingPlanIsABound(Row row) {
    EggLaw law = EggLaw.of(SEED, EggLaw.World.MIXED);
    for (PlanStudy.Bred season : SEASONS_OF.getOrDefault(row, List.of())) {
      double ovulation = season.bitch().ovulation();
      assertThat(
          law.share(row, season.ours().doses(), ovulation),
          lessThanOrEqualTo(Knower.share(law, row, ovulation) + 0.02));
    }
  }

  @Test
  void takesFewerTestsThanEverySecondDayWhereSemenLives() {
    for (Row row : List.of(Row.NATURAL, Row.FRESH_TWO, Row.CHILLED_TWO)) {
      assertThat(
          row.name(), score(row).tests(), lessThanOrEqualTo(score(row).untilPastFive() + SCATTER));
    }
  }

  @ParameterizedTest
  @EnumSource(Row.class)
  void givesNoMoreDosesThanThereAre(Row row) {
    for (PlanStudy.Bred season : SEASONS_OF.getOrDefault(row, List.of())) {
      List<Given> doses = season.ours().doses();
      assertThat(doses.size(), lessThanOrEqualTo(row.most()));
      for (int i = 1; i < doses.size(); i++) {
        double hours = (doses.get(i).day() - doses.get(i - 1).day()) * 24;
        assertThat(hours, greaterThan(row.spacingHours() - 7));
      }
    }
  }

  @Test
  void sameSeedSameSeasons() {
    List<PlanStudy.Bred> again = new PlanStudy(Tiderule.create(), SEED).breed(Row.CHILLED_ONE, 5);
    List<PlanStudy.Bred> once = SEASONS_OF.getOrDefault(Row.CHILLED_ONE, List.of());
    for (int i = 0; i < again.size(); i++) {
      assertThat(again.get(i).ours(), equalTo(once.get(i).ours()));
      assertThat(again.get(i).thumbs(), equalTo(once.get(i).thumbs()));
    }
  }

  /** The law of the eggs lies where the figures it is set to put it. */
  @Test
  void theLawOfTheEggsIsAsPublished() {
    EggLaw law = EggLaw.of(SEED, EggLaw.World.MIXED);
    for (double day = -1; day <= 3; day += 0.5) {
      assertThat(one(law, Row.NATURAL, day), greaterThan(0.8));
    }
    assertThat(one(law, Row.NATURAL, 6), equalTo(0.0));
    assertThat(one(law, Row.CHILLED_ONE, 3), greaterThan(0.97));
    assertThat(
        one(law, Row.FROZEN_ONE, 4),
        allOf(greaterThan(one(law, Row.FROZEN_ONE, 3)), greaterThan(one(law, Row.FROZEN_ONE, 5))));
    assertThat(
        one(EggLaw.of(SEED, EggLaw.World.EARLY), Row.FROZEN_ONE, 3), greaterThanOrEqualTo(0.9));
    EggLaw late = EggLaw.of(SEED, EggLaw.World.LATE);
    assertThat(one(late, Row.FROZEN_ONE, 3), lessThan(one(late, Row.FROZEN_ONE, 4)));
  }

  private static double one(EggLaw law, Row row, double after) {
    return law.share(row, List.of(new Given(after, 24)), 0);
  }
}
