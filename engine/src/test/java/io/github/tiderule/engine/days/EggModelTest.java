package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The tabulated egg model against its written formula, integrated by brute force. */
class EggModelTest {

  private static final Parameters PARAMETERS = Parameters.load();
  private static final EggModel MODEL = new EggModel(PARAMETERS);
  private static final double PROMISED = 0.01;

  /** Two doses miss a kind of egg as a whole, where the formula has them miss each egg. */
  private static final double PROMISED_FOR_TWO = 0.025;

  private static double value(String name) {
    return PARAMETERS.value("eggs." + name);
  }

  private static LogNormalDistribution logNormal(String median, String logSd) {
    return LogNormalDistribution.of(Math.log(value(median)), value(logSd));
  }

  /** Share met of given doses into the uterus, by the formula of the package page. */
  private static double byFormula(Semen semen, LogNormalDistribution sperm, double... doses) {
    double sd = Math.hypot(value("spread-sd"), value("ripening-sd"));
    NormalDistribution ripeness = NormalDistribution.of(value("ripening-mean"), sd);
    double late = semen == Semen.FROZEN ? value("frozen-late-weight") : 0;
    int cuts = 200;
    double met = 0;
    for (int r = 0; r < cuts; r++) {
      double ripe = ripeness.inverseCumulativeProbability((r + 0.5) / cuts);
      for (int f = 0; f < cuts; f++) {
        double q = (f + 0.5) / cuts;
        double shortLife =
            logNormal("life-short", "life-short-log-sd").inverseCumulativeProbability(q);
        double longLife =
            logNormal("life-long", "life-long-log-sd").inverseCumulativeProbability(q);
        double longLived = value("life-long-weight");
        for (double wait : new double[] {0, value("frozen-late-wait")}) {
          double school = wait > 0 ? late : 1 - late;
          met += school * (1 - longLived) * (1 - missed(ripe, shortLife, wait, sperm, doses));
          met += school * longLived * (1 - missed(ripe, longLife, wait, sperm, doses));
        }
      }
    }
    return met / (cuts * cuts);
  }

  private static double missed(
      double ripe, double life, double wait, LogNormalDistribution sperm, double... doses) {
    double missed = 1;
    for (double given : doses) {
      boolean eggAlive = life > Math.max(given + value("sperm-ready") - ripe, wait);
      double waits = ripe + wait - given;
      missed *= eggAlive ? (waits > 0 ? sperm.cumulativeProbability(waits) : 0) : 1;
    }
    return missed;
  }

  @Tag("long")
  @Test
  void oneDoseMeetsWhatTheFormulaSays() {
    LogNormalDistribution fresh = logNormal("life.fresh", "life.natural-log-sd");
    LogNormalDistribution frozen = logNormal("life.frozen", "life.frozen-log-sd");
    for (double day = -8; day <= 10; day += 0.75) {
      assertThat(
          "fresh, day " + day,
          MODEL.meeting(Semen.FRESH, Route.TRANSCERVICAL, 0).share(day),
          closeTo(byFormula(Semen.FRESH, fresh, day), PROMISED));
      assertThat(
          "frozen, day " + day,
          MODEL.meeting(Semen.FROZEN, Route.TRANSCERVICAL, 0).share(day),
          closeTo(byFormula(Semen.FROZEN, frozen, day), PROMISED));
    }
  }

  @Tag("long")
  @Test
  void twoDosesMeetWhatTheFormulaSays() {
    LogNormalDistribution frozen = logNormal("life.frozen", "life.frozen-log-sd");
    Meeting meeting = MODEL.meeting(Semen.FROZEN, Route.TRANSCERVICAL, 0);
    for (double first = 1.5; first <= 5; first += 0.5) {
      double both = 0;
      for (int egg = 0; egg < meeting.kinds().size(); egg++) {
        double missed = (1 - meeting.met(egg, first)) * (1 - meeting.met(egg, first + 1));
        both += meeting.kinds().get(egg).weight() * (1 - missed);
      }
      assertThat(
          "days " + first + " and " + (first + 1),
          both,
          closeTo(byFormula(Semen.FROZEN, frozen, first, first + 1), PROMISED_FOR_TWO));
    }
  }

  @Test
  void kindsSumToAllEggs() {
    for (boolean bothSchools : new boolean[] {true, false}) {
      List<EggKind> kinds = EggKind.all(PARAMETERS, bothSchools);
      assertThat(kinds.stream().mapToDouble(EggKind::weight).sum(), closeTo(1, 1e-12));
    }
  }

  @Test
  void everyShareIsAShare() {
    for (Semen semen : Semen.values()) {
      for (Route route : Route.values()) {
        for (double age : new double[] {0, 24, 72, 500}) {
          Meeting meeting = MODEL.meeting(semen, route, age);
          for (double day = -15; day <= 17; day += 0.31) {
            assertThat(
                meeting.share(day), allOf(greaterThanOrEqualTo(0.0), lessThanOrEqualTo(1.0)));
          }
        }
      }
    }
  }

  /** Earlier matings of another semen are counted egg by egg, whichever list is longer. */
  @Test
  void dosesOfTwoSemensAreCountedOnTheSameEggs() {
    Meeting natural = MODEL.meeting(Semen.NATURAL, Route.NATURAL, 0);
    Meeting frozen = MODEL.meeting(Semen.FROZEN, Route.TRANSCERVICAL, 0);
    int few = natural.kinds().size();
    int many = frozen.kinds().size();
    for (double day = -2; day <= 7; day += 0.5) {
      double naturalSeenByFrozen = 0;
      for (int egg = 0; egg < many; egg++) {
        naturalSeenByFrozen += frozen.kinds().get(egg).weight() * natural.met(egg, many, day);
      }
      double frozenSeenByNatural = 0;
      for (int egg = 0; egg < few; egg++) {
        frozenSeenByNatural += natural.kinds().get(egg).weight() * frozen.met(egg, few, day);
      }
      assertThat(naturalSeenByFrozen, closeTo(natural.share(day), 1e-9));
      assertThat(frozenSeenByNatural, closeTo(frozen.share(day), 1e-9));
    }
  }
}
