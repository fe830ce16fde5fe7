package io.github.tiderule.cases.oracle;

import io.github.tiderule.rules.Chapter;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.conclusion.Finding;
import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Forecast;
import io.github.tiderule.rules.fact.Moment;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A season drawn from a seed, with what every stage may be given; sensible or not. */
final class DrawnSeason {

  /** The stages of care. */
  static final List<Stage> CARE =
      Arrays.stream(Stage.values()).filter(stage -> stage.chapter() == Chapter.CARE).toList();

  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  private static final Instant START = Instant.parse("2027-01-03T07:00:00Z");
  private static final LocalDate FIRST_DAY = LocalDate.of(2027, 1, 3);
  private static final FindingKind[] LATER = {
    FindingKind.PROVEN_OVULATION,
    FindingKind.LATE_PRESENTATION,
    FindingKind.DIOESTROUS_SHIFT,
    FindingKind.SINGLE_SMEAR,
    FindingKind.LH_SURGE
  };

  private final Random random;
  final Moment moment;
  final FirstBlood blood;
  final Female female;
  final SemenPlan semen;
  final Forecast forecast;
  final List<Level> levels = new ArrayList<>();
  final List<LhTest> lhTests = new ArrayList<>();
  final List<Smear> smears = new ArrayList<>();
  final List<Vaginoscopy> folds = new ArrayList<>();
  final List<Sign> signs = new ArrayList<>();
  final List<Treatment> treatments = new ArrayList<>();
  final List<CandidateDay> days = new ArrayList<>();
  final List<Finding> findings = new ArrayList<>();
  final List<Progesterone> reports = new ArrayList<>();
  final List<ProgesteroneBand> bands = new ArrayList<>();

  DrawnSeason(long seed) {
    this.random = new Random(seed);
    double now = 6 + random.nextInt(100) * (random.nextBoolean() ? 0.2 : 1);
    this.moment = new Moment(at(now), ZONE);
    this.blood =
        random.nextInt(5) == 0
            ? new FirstBlood(null, Certainty.UNKNOWN)
            : new FirstBlood(FIRST_DAY, Certainty.SEEN);
    @Nullable LocalDate born =
        random.nextInt(4) == 0 ? null : FIRST_DAY.minusMonths(6 + random.nextInt(120));
    this.female = new Female("juniper", null, null, null, born, null, null, null);
    this.semen =
        new SemenPlan(
            pick(Semen.values()),
            pick(Route.values()),
            random.nextInt(3) == 0 ? null : 1 + random.nextInt(3),
            null,
            null,
            null,
            List.of(),
            null);
    double width = random.nextInt(20) * 0.5;
    Instant middle = at(now + 2);
    this.forecast =
        new Forecast(
            middle,
            middle,
            middle,
            middle,
            middle,
            2,
            width,
            random.nextInt(10) * 0.05,
            0.05,
            0.01,
            0.01,
            0.01,
            0.5);
    observe();
    calendar(now);
  }

  static Instant at(double day) {
    return START.plusSeconds(Math.round(day * 86_400));
  }

  private void observe() {
    int count = random.nextInt(7);
    double level = 0.3 + random.nextInt(10) * 0.1;
    double day = random.nextInt(6);
    for (int i = 0; i < count; i++) {
      Series series = Series.of(random.nextInt(4) == 0 ? "B" : "A", Method.RIA);
      levels.add(level("v" + i, at(day), level, series));
      level *= 0.5 + random.nextDouble() * 2.2;
      day += random.nextInt(3) == 0 ? 0.3 : 1 + random.nextInt(3);
      if (random.nextInt(12) == 0) {
        level = 0.6;
      }
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      lhTests.add(new LhTest("l" + i, at(random.nextInt(20) * 0.7), random.nextInt(3) == 0));
    }
    for (int i = random.nextInt(4); i > 0; i--) {
      @Nullable Double cornified = random.nextInt(5) == 0 ? null : random.nextInt(21) * 5.0;
      @Nullable Neutrophils cells = random.nextInt(3) == 0 ? null : pick(Neutrophils.values());
      smears.add(new Smear("c" + i, at(4 + random.nextInt(16)), cornified, cells));
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      folds.add(new Vaginoscopy("f" + i, at(4 + random.nextInt(16)), pick(Folds.values())));
    }
    SignKind[] ill = {SignKind.UNWELL, SignKind.FOUL_DISCHARGE, SignKind.STANDS};
    for (int i = random.nextInt(4); i > 0; i--) {
      signs.add(new Sign("s" + i, at(random.nextInt(40)), pick(ill), random.nextInt(3) > 0));
    }
    if (random.nextInt(4) == 0) {
      treatments.add(
          new Treatment(pick(TreatmentKind.values()), FIRST_DAY.minusDays(random.nextInt(150))));
    }
    for (int i = random.nextInt(4); i > 0; i--) {
      reports.add(report("p" + i));
      bands.add(band("k" + i));
    }
  }

  private Level level(String id, Instant at, double value, Series series) {
    double factor = random.nextInt(3) == 0 ? 0.85 : 1;
    return switch (random.nextInt(8)) {
      case 0 -> Level.below(id, at, value, factor, series);
      case 1 -> Level.above(id, at, value, factor, series);
      default -> Level.value(id, at, value, factor, series);
    };
  }

  private Instant anyTime() {
    int day = random.nextInt(8) == 0 ? -160 : random.nextInt(6) == 0 ? -30 : random.nextInt(120);
    return at(day);
  }

  private Progesterone report(String id) {
    return new Progesterone(
        id,
        anyTime(),
        null,
        random.nextInt(4) == 0 ? 80 + random.nextInt(60) : random.nextInt(30),
        null,
        random.nextInt(4) == 0 ? null : pick(Unit.values()),
        Method.RIA,
        "A",
        null,
        null,
        List.of(),
        null);
  }

  private ProgesteroneBand band(String id) {
    @Nullable Unit unit = random.nextBoolean() ? null : pick(Unit.values());
    return new ProgesteroneBand(id, anyTime(), 3.0, 10.0, unit);
  }

  private void calendar(double now) {
    int first = (int) Math.floor(now);
    for (int i = 0; i < 8; i++) {
      double sinceOvulation = i - 4 + random.nextInt(9);
      days.add(
          new CandidateDay(
              FIRST_DAY.plusDays(first + i),
              at(first + i),
              at(first + i + 0.5),
              random.nextInt(21) * 0.05,
              0.1,
              sinceOvulation,
              random.nextInt(21) * 0.05,
              random.nextInt(21) * 0.05,
              24));
    }
    for (FindingKind kind : LATER) {
      if (random.nextInt(3) == 0) {
        findings.add(Finding.of(kind, Sentence.of("drawn for a test"), "x"));
      }
    }
  }

  private <T> T pick(T[] values) {
    return values[random.nextInt(values.length)];
  }

  private List<Object> with(List<?>... facts) {
    List<Object> all = new ArrayList<>(List.of(moment, blood, female, semen));
    for (List<?> some : facts) {
      all.addAll(some);
    }
    return all;
  }

  /** Everything that was seen, as it came. */
  List<Observation> observations() {
    return Stream.<List<? extends Observation>>of(reports, bands, smears, lhTests)
        .flatMap(List::stream)
        .map(Observation.class::cast)
        .toList();
  }

  List<Object> forReading() {
    return with(observations());
  }

  List<Object> forFindings() {
    return with(levels, lhTests, smears, folds, treatments);
  }

  List<Object> forDays() {
    return with(days, findings, List.of(forecast));
  }

  List<Object> forNext() {
    return with(findings, levels);
  }

  List<Object> forCare() {
    return with(signs, treatments, List.of(forecast));
  }
}
