package io.github.tiderule.cases.whelping;

import io.github.tiderule.cases.cohort.Bitch;
import io.github.tiderule.cases.cohort.Bitches;
import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.cases.cohort.Draws;
import io.github.tiderule.cases.cohort.Laboratory;
import io.github.tiderule.cases.cohort.Season;
import io.github.tiderule.cases.cohort.SmearReader;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.util.ArrayList;
import java.util.List;

/**
 * One pregnancy, as it is and as its keeper knows it.
 *
 * @param whelping when she whelps, days on the cohort's calendar
 */
record SimulatedPregnancy(Bitch bitch, double whelping, CycleRecord known) {

  private static final double MORNING = 8.5 / 24;
  private static final double EVENING = 19 / 24.0;
  private static final double MASS_KG = 8;

  /** The pregnancy of that number of a cohort. */
  static SimulatedPregnancy draw(GestationLaw law, Keeping keeping, long seed, int number) {
    Bitch bitch = Bitches.draw(seed, number);
    Draws truth = Draws.of(seed + 11, number);
    int pups = 1 + truth.pick(0.04, 0.07, 0.11, 0.14, 0.18, 0.18, 0.13, 0.09, 0.06);
    double whelping = law.whelping(bitch, pups, truth);
    Draws draws = Draws.of(seed + 12, number);
    List<Observation> seen = season(bitch, keeping, draws);
    double asked = bitch.ovulation() + 56;
    if (keeping.scanned()) {
      double day = Math.floor(bitch.ovulation()) + 29 + MORNING;
      seen.add(scan(day, whelping, draws));
    }
    if (keeping.counted()) {
      double day = Math.floor(bitch.ovulation()) + 55 + MORNING;
      seen.add(new Radiograph("r", Calendar.instant(day), pups, true));
    }
    if (keeping.temperatures()) {
      asked = temperatures(seen, bitch, whelping, draws);
    }
    return new SimulatedPregnancy(
        bitch,
        whelping,
        CycleRecord.on(Calendar.instant(asked + 0.05), Calendar.ZONE)
            .female(Female.unknown().bodyMassKg(MASS_KG))
            .firstBlood(FirstBlood.seen(Calendar.FIRST_DAY.plusDays(bitch.noticedAfter())))
            .addAll(seen)
            .build());
  }

  /** Progesterone every second day until the rise is proven; smears daily past the shift. */
  private static List<Observation> season(Bitch bitch, Keeping keeping, Draws draws) {
    Laboratory laboratory = Laboratory.any("A", draws);
    List<Observation> seen = new ArrayList<>();
    int start = bitch.noticedAfter() + 5 + draws.pick(1 / 3.0, 1 / 3.0, 1 / 3.0);
    for (int day = start; day <= 35 && !Season.proven(seen); day += 2) {
      seen.add(laboratory.measure("p" + seen.size(), day + MORNING, bitch, draws));
    }
    if (keeping.smears()) {
      for (int day = start; day <= bitch.dioestrus() + 2; day++) {
        seen.add(SmearReader.read("c" + seen.size(), day + MORNING, bitch, draws));
      }
    }
    double bred = Math.floor(bitch.ovulation()) + 2 + EVENING;
    seen.add(new BreedingDone("m", Calendar.instant(bred), Semen.NATURAL, Route.NATURAL));
    return seen;
  }

  /**
   * Three chorionic cavities, by the line of small bitches, with the error that beccaglia-2012
   * found at five weeks: 68 and 86 % within one and two days.
   */
  private static PregnancyScan scan(double day, double whelping, Draws draws) {
    double left = whelping - day + draws.normal(0, 1.5);
    List<Double> cavities = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      cavities.add(Math.max(1, 68.68 - 1.53 * left + draws.normal(0, 1.5)));
    }
    return new PregnancyScan(
        "u", Calendar.instant(day), ScanFinding.HEARTBEATS, cavities, List.of(), null);
  }

  /** Twice a day from day 55 until the first low reading, or whelping; the time of the last one. */
  private static double temperatures(
      List<Observation> seen, Bitch bitch, double whelping, Draws draws) {
    double fall = whelping - Math.min(33, Math.max(13, draws.gammaWith(21.5, 5))) / 24;
    double last = bitch.ovulation() + 54;
    for (double day = Math.floor(bitch.ovulation()) + 55; ; day++) {
      for (double hour : new double[] {MORNING, EVENING}) {
        double at = day + hour;
        if (at >= whelping) {
          return last;
        }
        boolean low = at >= fall || draws.chance(0.01);
        double celsius = low ? draws.uniform(36.9, 37.5) : draws.uniform(37.7, 38.4);
        seen.add(new BodyTemperature("t" + seen.size(), Calendar.instant(at), celsius));
        last = at;
        if (low) {
          return last;
        }
      }
    }
  }
}
