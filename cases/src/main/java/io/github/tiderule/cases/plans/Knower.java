package io.github.tiderule.cases.plans;

import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.days.Slots;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** The best that can be met by one who knows the true ovulation and the law of the eggs. */
final class Knower {

  private static final Parameters PARAMETERS = Parameters.load();
  private static final double BEFORE = 4;
  private static final double AFTER = 7;

  private final Row row;
  private final List<Slot> slots;
  private final List<List<BitSet>> met = new ArrayList<>();
  private final double[] day;
  private double best;

  private Knower(EggLaw law, Row row, double ovulation) {
    this.row = row;
    LocalDate last = Calendar.instant(ovulation + AFTER).atZone(Calendar.ZONE).toLocalDate();
    slots =
        new Slots(
                PARAMETERS,
                row.told(row.most(), List.of()),
                Calendar.instant(ovulation - BEFORE - 3),
                Calendar.ZONE)
            .until(last).stream()
                .filter(slot -> Calendar.day(slot.middle()) > ovulation - BEFORE)
                .toList();
    day = slots.stream().mapToDouble(slot -> Calendar.day(slot.middle())).toArray();
    for (int place = 0; place < row.most(); place++) {
      List<BitSet> ofPlace = new ArrayList<>();
      for (int s = 0; s < day.length; s++) {
        ofPlace.add(law.met(row, place, day[s] - ovulation, slots.get(s).ageHours()));
      }
      met.add(ofPlace);
    }
  }

  /** Share of her eggs met by the best set of doses in the windows and parcels there are. */
  static double share(EggLaw law, Row row, double ovulation) {
    Knower knower = new Knower(law, row, ovulation);
    knower.extend(0, 0, new BitSet());
    return knower.best;
  }

  private void extend(int place, int from, BitSet before) {
    if (place == row.most()) {
      best = Math.max(best, EggLaw.share(before));
      return;
    }
    for (int s = from; s < day.length; s++) {
      BitSet with = (BitSet) before.clone();
      with.or(met.get(place).get(s));
      int next = s + 1;
      while (next < day.length && (day[next] - day[s]) * 24 < row.spacingHours() - 1e-6) {
        next++;
      }
      extend(place + 1, next, with);
      best = Math.max(best, EggLaw.share(with));
    }
  }
}
