package io.github.tiderule.cases.odd;

import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.cases.cohort.Draws;
import io.github.tiderule.cases.cohort.Laboratory;
import io.github.tiderule.cases.cohort.SmearReader;
import io.github.tiderule.cases.plans.Row;
import io.github.tiderule.engine.CycleBuilder;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.CycleRefused;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Somebody who tests a female as the trade does and types what comes: from day 5 to 7; below 1
 * ng/mL every 3 to 4 days, from 1 to 2 every 2 to 3, from 2 daily or every second day until the
 * rise is proven by the typed values, and twice more after that (common practice). Every second one
 * takes smears. One laboratory.
 */
final class Keeping {

  private static final double EVENING = 20 / 24.0;
  private static final double MORNING = 8.5 / 24;
  private static final double HOUR = 1 / 24.0;
  private static final double PULSE = 0.06;
  private static final int AFTER_OVULATION = 7;
  private static final int WITHOUT_OVULATION = 28;
  private static final int LATEST_BEGIN = 330;
  private static final double PROVEN = 8;
  private static final double RISEN = 2;

  private final Truth truth;
  private final Draws draws;
  private final Row row;
  private final Laboratory laboratory;
  private final boolean smears;
  private final boolean daily;
  private final boolean nmol;
  private final Slips slips;
  private final int begins;
  private final @Nullable FirstBlood noted;
  private final @Nullable FirstBlood typed;

  private final List<Observation> clean = new ArrayList<>();
  private final List<Observation> told = new ArrayList<>();
  private final List<Progesterone> values = new ArrayList<>();
  private final Set<String> slipped = new HashSet<>();
  private final List<Moment> moments = new ArrayList<>();
  private double before;
  private boolean bred;

  private record Moment(
      double day,
      List<Observation> told,
      List<Observation> clean,
      Set<String> slipped,
      boolean bred) {}

  private Keeping(Truth truth, Draws draws) {
    this.truth = truth;
    this.draws = draws;
    row = List.of(Row.NATURAL, Row.CHILLED_ONE, Row.FROZEN_ONE).get(truth.number() % 3);
    laboratory = Laboratory.any("A", draws);
    smears =
        switch (truth.kind()) {
          case LATE_WITH_SMEARS -> true;
          case LATE_WITHOUT_SMEARS -> false;
          default -> truth.number() / 3 % 2 == 0;
        };
    daily = draws.chance(0.6);
    nmol = truth.kind() == Kind.NMOL_TYPED_AS_NG;
    slips = new Slips(truth, draws);
    begins = begins();
    boolean nobodySaw = truth.kind().late() && draws.chance(0.5);
    double blood = truth.kind().newBlood() ? truth.trueBlood() : 0;
    LocalDate day = date(blood + truth.noticedAfter());
    noted = nobodySaw ? null : FirstBlood.seen(day);
    typed = nobodySaw ? null : Slips.typed(truth.kind(), day, draws);
  }

  /** The season of a female as it was kept; the same for the same seed. */
  static OddSeason of(long seed, Kind kind, int number) {
    Truth truth = Truths.draw(seed, kind, number);
    return new Keeping(truth, Truths.draws(seed + 1, kind, number)).keep();
  }

  private int begins() {
    while (true) {
      int day = (int) draws.uniform(0, LATEST_BEGIN);
      LocalDate noticed = Calendar.FIRST_DAY.plusDays(day + truth.noticedAfter());
      if (truth.kind() != Kind.BLOOD_EXCHANGED || Slips.exchangeable(noticed)) {
        return day;
      }
    }
  }

  private LocalDate date(double day) {
    return Calendar.FIRST_DAY.plusDays(begins + (long) Math.floor(day));
  }

  private OddSeason keep() {
    if (truth.kind().late()) {
      late();
    } else if (truth.kind().brokenOff()) {
      brokenOff();
    } else {
      usual(truth.noticedAfter(), lastDay());
      if (truth.kind() == Kind.LUTEAL_FAILURE) {
        bredAndFollowed();
      }
    }
    List<Asked> asked = new ArrayList<>();
    for (int i = 0; i < moments.size(); i++) {
      double next = i + 1 < moments.size() ? moments.get(i + 1).day() : moments.get(i).day() + 1;
      asked.add(asked(moments.get(i), next));
    }
    return new OddSeason(truth, row, begins, asked);
  }

  private double lastDay() {
    return truth.ovulates() ? truth.ovulation() + AFTER_OVULATION : WITHOUT_OVULATION;
  }

  private void late() {
    double first = truth.ovulation() + draws.uniform(0.5, 6);
    for (int i = 0; i < 3; i++) {
      visit(Math.floor(first) + i);
    }
  }

  private void brokenOff() {
    if (!truth.kind().newBlood()) {
      usual(truth.noticedAfter(), truth.bleedingStops() - 1);
      double stops = Math.floor(truth.bleedingStops()) + MORNING;
      sign(SignKind.BLEEDING_STOPS, stops);
      remember(Math.floor(stops) + EVENING);
      sign(SignKind.FLAGS, truth.trueBlood() + truth.noticedAfter() + 3 + MORNING);
    }
    usual(truth.trueBlood() + truth.noticedAfter(), lastDay());
  }

  private void sign(SignKind kind, double day) {
    Sign sign = Sign.seen(kind, Calendar.instant(begins + day)).withId("s" + told.size());
    told.add(sign);
    clean.add(sign);
  }

  private void usual(double blood, double last) {
    values.clear();
    double day = blood + 4 + draws.pick(1 / 3.0, 1 / 3.0, 1 / 3.0);
    int more = 2;
    boolean burst = truth.burstFrom() < last;
    while (day <= last) {
      if (burst && day > truth.burstFrom()) {
        test((truth.burstFrom() + truth.burstUntil()) / 2);
        burst = false;
      }
      visit(day);
      if (proven()) {
        if (more-- == 0) {
          return;
        }
        day += 2;
        continue;
      }
      double level = values.get(values.size() - 1).ngPerMl();
      int late = draws.pick(0.5, 0.5);
      day += level >= 2 ? (daily ? 1 : 2) : level >= 1 ? 2 + late : 3 + late;
    }
  }

  /** A value above 8 and half as much again as an earlier one above 2. */
  private boolean proven() {
    for (int i = 0; i < values.size(); i++) {
      for (int j = i + 1; j < values.size(); j++) {
        double a = values.get(i).ngPerMl();
        double b = values.get(j).ngPerMl();
        if (a > RISEN && b > PROVEN && b >= 1.5 * a) {
          return true;
        }
      }
    }
    return false;
  }

  private void bredAndFollowed() {
    moments.removeIf(moment -> moment.day() > truth.ovulation() + 2);
    clean.removeIf(one -> Calendar.day(one.at()) - begins > truth.ovulation() + 2);
    told.removeIf(one -> Calendar.day(one.at()) - begins > truth.ovulation() + 2);
    breed(truth.ovulation() + draws.uniform(1.5, 2.5));
    if (row == Row.NATURAL) {
      breed(truth.ovulation() + draws.uniform(3.5, 4.5));
    }
    bred = true;
    for (int after : new int[] {8, 11, 14}) {
      visit(Math.floor(truth.ovulation() + after));
    }
  }

  private void breed(double day) {
    BreedingDone done = BreedingDone.of(row.semen(), Calendar.instant(begins + day));
    if (row != Row.NATURAL) {
      done = done.route(io.github.tiderule.rules.fact.semen.Route.TRANSCERVICAL);
    }
    told.add(done.withId("m" + told.size()));
    clean.add(done.withId("m" + clean.size()));
  }

  private void test(double day) {
    LhTest test = new LhTest("l" + told.size(), Calendar.instant(begins + day), true);
    told.add(test);
    clean.add(test);
    remember(Math.max(Math.floor(day) + EVENING, day + HOUR));
  }

  /** A visit in the morning. */
  private void visit(double day) {
    double drawn = Math.floor(day) + MORNING + draws.uniform(-1.5, 1.5) * HOUR;
    String id = "p" + told.size();
    double blood = truth.progesterone().at(drawn) * StrictMath.exp(PULSE * draws.t5());
    Progesterone measured = laboratory.read(id, begins + drawn, blood, draws);
    if (nmol) {
      double value = Math.round(Unit.NMOL_PER_L.fromNgPerMl(measured.value()) * 10) / 10.0;
      measured = Slips.with(measured, value, measured.comparator(), Unit.NMOL_PER_L);
    }
    Progesterone slip = slips.typed(measured, drawn, before);
    before = measured.comparator() == Comparator.BELOW ? 0 : measured.ngPerMl();
    if (slip != null) {
      slipped.add(id);
    }
    Progesterone typedValue = slip == null ? measured : slip;
    clean.add(measured);
    told.add(typedValue);
    values.add(typedValue);
    if (smears) {
      Observation smear =
          SmearReader.read(
              "c" + told.size(),
              begins + drawn,
              truth.cornifiedAt(drawn),
              truth.turnedAt(drawn),
              draws);
      told.add(smear);
      clean.add(smear);
    }
    if (truth.kind() == Kind.EARLY_BURST) {
      LhTest test =
          new LhTest("l" + told.size(), Calendar.instant(begins + drawn), truth.lhHighAt(drawn));
      told.add(test);
      clean.add(test);
    }
    remember(Math.floor(day) + EVENING);
  }

  private void remember(double day) {
    moments.add(new Moment(day, List.copyOf(told), List.copyOf(clean), Set.copyOf(slipped), bred));
  }

  private Asked asked(Moment moment, double next) {
    boolean slip = !moment.slipped().isEmpty() || truth.kind().slippedBlood();
    return new Asked(
        moment.day(),
        next,
        record(moment.day(), typed, moment.told()),
        slip ? record(moment.day(), noted, moment.clean()) : null,
        moment.slipped(),
        moment.bred());
  }

  private @Nullable CycleRecord record(
      double day, @Nullable FirstBlood blood, List<Observation> observations) {
    CycleBuilder cycle =
        CycleRecord.on(Calendar.instant(begins + day), Calendar.ZONE)
            .firstBlood(blood == null ? FirstBlood.unknown() : blood)
            .addAll(observations)
            .semen(row.told(1, List.of()));
    if (truth.kind().newBlood()) {
      cycle.add(EarlierCycle.from(date(truth.noticedAfter())));
    }
    try {
      return cycle.build();
    } catch (CycleRefused refused) {
      return null;
    }
  }
}
