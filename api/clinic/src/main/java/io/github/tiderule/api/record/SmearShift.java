package io.github.tiderule.api.record;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The first day of cytological dioestrus in a season that is over: the day of the smear that showed
 * the shift, as rule FND-052 finds it, where the full smear before it is so near that the day is
 * known.
 *
 * <p>The record reads it without the rules, since it looks at every earlier season whenever one is
 * answered; thresholds are those the rules come with.
 */
final class SmearShift {

  /** Smears further apart leave the day of the shift open. */
  private static final long MOST_DAYS_BETWEEN = 2;

  private static final SmearShift USUAL = new SmearShift(Parameters.load());

  private final double full;
  private final double points;

  private SmearShift(Parameters parameters) {
    this.full = parameters.value("findings.smear.full");
    this.points = parameters.value("findings.shift.points");
  }

  /** The last full smear and the first one past the shift. */
  record Pair(Smear before, Smear after) {}

  /** The first day of dioestrus in the season's own zone; absent where the smears do not tell. */
  static @Nullable LocalDate firstDay(CycleRecord season) {
    List<Pair> pairs = pairs(season);
    if (pairs.isEmpty()) {
      return null;
    }
    Pair last = pairs.get(pairs.size() - 1);
    LocalDate before = last.before().at().atZone(season.zone()).toLocalDate();
    LocalDate after = last.after().at().atZone(season.zone()).toLocalDate();
    return ChronoUnit.DAYS.between(before, after) <= MOST_DAYS_BETWEEN ? after : null;
  }

  /** Every shift between two smears, in order of time. */
  static List<Pair> pairs(CycleRecord season) {
    return USUAL.found(
        season.observations().stream()
            .filter(Smear.class::isInstance)
            .map(Smear.class::cast)
            .filter(smear -> smear.cornifiedPercent() != null)
            .sorted(Comparator.comparing(Smear::at))
            .toList());
  }

  private List<Pair> found(List<Smear> smears) {
    List<Pair> pairs = new ArrayList<>();
    for (Smear before : smears) {
      if (!(cornified(before) >= full)) {
        continue;
      }
      for (Smear after : smears) {
        if (!after.at().isAfter(before.at())) {
          continue;
        }
        if (isPast(before, after)) {
          pairs.add(new Pair(before, after));
          break;
        }
        if (cornified(after) >= full) {
          break;
        }
      }
    }
    return pairs;
  }

  private boolean isPast(Smear before, Smear after) {
    return cornified(after) <= cornified(before) - points
        && (after.neutrophils() == Neutrophils.FEW || after.neutrophils() == Neutrophils.MANY);
  }

  private static double cornified(Smear smear) {
    Double percent = smear.cornifiedPercent();
    return percent == null ? Double.NaN : percent;
  }
}
