package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * Every kind of egg and every dose beside the formulas of the package page, kind by kind. The model
 * is made anew for each test, unlike in {@link EggModelTest}.
 */
class EggFormulaTest {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  private final Parameters parameters = Parameters.load();
  private final EggModel model = new EggModel(parameters);

  private double value(String name) {
    return parameters.value("eggs." + name);
  }

  /** What a kind of egg is, by the page: cut at σ·x, weights as exp(−x²/1.5), σ/2 left. */
  private List<EggKind> kinds(boolean bothSchools) {
    double sigma = Math.hypot(value("spread-sd"), value("ripening-sd"));
    double[] five = {-1.6, -0.8, 0, 0.8, 1.6};
    double[] three = {-1.2, 0, 1.2};
    double sumFive = 0;
    for (double x : five) {
      sumFive += Math.exp(-x * x / 1.5);
    }
    double sumThree = 0;
    for (double x : three) {
      sumThree += Math.exp(-x * x / 1.5);
    }
    double late = bothSchools ? value("frozen-late-weight") : 0;
    List<EggKind> kinds = new ArrayList<>();
    for (EggKind.School school : EggKind.School.values()) {
      boolean early = school == EggKind.School.EARLY;
      double weight = early ? 1 - late : late;
      double opens = early ? 0 : value("frozen-late-wait");
      for (double x : five) {
        double ripe = value("ripening-mean") + sigma * x;
        double of = weight * Math.exp(-x * x / 1.5) / sumFive;
        kinds.add(
            new EggKind(
                of * (1 - value("life-long-weight")),
                school,
                EggKind.View.SHORT,
                ripe,
                sigma / 2,
                opens,
                value("life-short"),
                value("life-short-log-sd")));
        for (double y : three) {
          kinds.add(
              new EggKind(
                  of * value("life-long-weight") * Math.exp(-y * y / 1.5) / sumThree,
                  school,
                  EggKind.View.LONG,
                  ripe,
                  sigma / 2,
                  opens,
                  value("life-long") * Math.exp(value("life-long-log-sd") * y),
                  value("life-long-log-sd") / 2));
        }
      }
    }
    return kinds.stream().filter(kind -> kind.weight() > 0).toList();
  }

  @Test
  void theKindsOfEggsAreThoseOfThePage() {
    for (boolean bothSchools : new boolean[] {true, false}) {
      List<EggKind> expected = new ArrayList<>(kinds(bothSchools));
      List<EggKind> kinds = EggKind.all(parameters, bothSchools);
      assertThat(kinds.size(), is(expected.size()));
      for (EggKind kind : kinds) {
        boolean found = expected.removeIf(other -> same(kind, other));
        assertThat(kind + " among " + expected, found, is(true));
      }
      assertThat(expected, equalTo(List.of()));
    }
  }

  private static boolean same(EggKind one, EggKind other) {
    return one.school() == other.school()
        && one.view() == other.view()
        && Math.abs(one.weight() - other.weight()) < 1e-9
        && Math.abs(one.ripe() - other.ripe()) < 1e-9
        && Math.abs(one.ripeSd() - other.ripeSd()) < 1e-9
        && Math.abs(one.opens() - other.opens()) < 1e-9
        && Math.abs(one.life() - other.life()) < 1e-9
        && Math.abs(one.lifeLogSd() - other.lifeLogSd()) < 1e-9;
  }

  /** The mean over a normal ripening time of both being alive, summed finely. */
  private double met(EggKind egg, double given, double spent, LogNormalDistribution sperm) {
    DoubleUnaryOperator alive =
        ripe -> {
          double age = spent + Math.max(0, ripe + egg.opens() - given);
          double waits = Math.max(given + value("sperm-ready") - ripe, egg.opens());
          double s = age > 0 ? 1 - sperm.cumulativeProbability(age) : 1;
          double e =
              waits > 0
                  ? 1
                      - STANDARD.cumulativeProbability(
                          Math.log(waits / egg.life()) / egg.lifeLogSd())
                  : 1;
          return s * e;
        };
    double sum = 0;
    double weights = 0;
    for (double z = -5; z <= 5; z += 0.02) {
      double weight = STANDARD.density(z);
      sum += weight * alive.applyAsDouble(egg.ripe() + z * egg.ripeSd());
      weights += weight;
    }
    return sum / weights;
  }

  private LogNormalDistribution life(String name) {
    String spread = name.equals("fresh") ? "natural" : name;
    return LogNormalDistribution.of(
        Math.log(value("life." + name)), value("life." + spread + "-log-sd"));
  }

  private void compare(Semen semen, Route route, double hours) {
    String name = semen.name().toLowerCase(java.util.Locale.ROOT);
    boolean vaginal = route == Route.NATURAL || route == Route.VAGINAL;
    double whole = Math.min(Math.max(Math.rint(hours), 0), 240);
    double spent =
        semen == Semen.CHILLED ? value("life.chilled-loss") * Math.max(0, whole / 24 - 1) : 0;
    Meeting meeting = model.meeting(semen, route, hours);
    for (double day = -6; day <= 9; day += 0.75) {
      double closed =
          STANDARD.cumulativeProbability((day - value("closed-after")) / value("closed-sd"));
      assertThat(model.probabilityClosed(day), closeTo(closed, 1e-12));
      for (int egg = 0; egg < meeting.eggs(); egg++) {
        double met = met(meeting.kinds().get(egg), day, spent, life(name));
        assertThat(
            semen + ", " + route + ", " + hours + " h, day " + day + ", kind " + egg,
            meeting.met(egg, day),
            closeTo((vaginal ? 1 - closed : 1) * met, 0.02));
      }
    }
  }

  @Test
  void everyDoseMeetsWhatTheFormulaSays() {
    compare(Semen.NATURAL, Route.NATURAL, 0);
    compare(Semen.FRESH, Route.VAGINAL, 48);
    compare(Semen.FRESH, Route.TRANSCERVICAL, 0);
    compare(Semen.FROZEN, Route.SURGICAL, 0);
    compare(Semen.CHILLED, Route.VAGINAL, 24);
    compare(Semen.CHILLED, Route.TRANSCERVICAL, 60.4);
    compare(Semen.CHILLED, Route.TRANSCERVICAL, -3);
    compare(Semen.CHILLED, Route.TRANSCERVICAL, 900);
  }

  /** Straight lines between eighths of a day, and nothing beyond. */
  @Test
  void betweenItsPlacesTheTableGoesInStraightLines() {
    double[] table = new double[Meeting.SIZE];
    for (int i = 0; i < table.length; i++) {
      table[i] = (i % 5) / 8.0 + i / 1000.0;
    }
    List<EggKind> kinds = List.of(EggKind.all(parameters, false).get(0));
    Meeting meeting = new Meeting(kinds, new double[][] {table});
    assertThat(Meeting.dayAt(0), is(-12.0));
    assertThat(Meeting.dayAt(Meeting.SIZE - 1), is(14.0));
    for (int i = 0; i < table.length - 1; i += 7) {
      assertThat(meeting.met(0, Meeting.dayAt(i)), closeTo(table[i], 1e-12));
      assertThat(
          meeting.met(0, Meeting.dayAt(i) + 0.05),
          closeTo(table[i] + 0.4 * (table[i + 1] - table[i]), 1e-9));
    }
    assertThat(meeting.met(0, -12.01), is(0.0));
    assertThat(meeting.met(0, Double.NaN), is(0.0));
    assertThat(meeting.met(0, 14), is(0.0));
    assertThat(meeting.met(0, 13.99) > 0, is(true));
    assertThat(meeting.eggs(), is(1));
    assertThat(meeting.kinds(), equalTo(kinds));
    assertThat(meeting.weight(0), is(kinds.get(0).weight()));
    assertThat(meeting.share(0.05), closeTo(kinds.get(0).weight() * meeting.met(0, 0.05), 1e-12));
  }

  /** Two kinds of another list fold into one, by their weights; one stands for two as it is. */
  @Test
  void listsOfKindsMeet() {
    List<EggKind> both = EggKind.all(parameters, true);
    List<EggKind> one = EggKind.all(parameters, false);
    int few = one.size();
    double[][] met = new double[both.size()][Meeting.SIZE];
    for (int egg = 0; egg < met.length; egg++) {
      java.util.Arrays.fill(met[egg], (egg + 1) / 100.0);
    }
    Meeting frozen = new Meeting(both, met);
    double late = value("frozen-late-weight");
    for (int egg = 0; egg < few; egg++) {
      assertThat(
          frozen.met(egg, few, 1),
          closeTo((1 - late) * (egg + 1) / 100.0 + late * (egg + few + 1) / 100.0, 1e-12));
      assertThat(frozen.met(egg, both.size(), 1), closeTo((egg + 1) / 100.0, 1e-12));
    }
    Meeting natural = new Meeting(one, java.util.Arrays.copyOf(met, few));
    assertThat(natural.met(few + 2, both.size(), 1), closeTo(0.03, 1e-12));
  }
}
