package io.github.tiderule.api.report;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.BodyTemperature;
import io.github.tiderule.rules.fact.BreedingDone;
import io.github.tiderule.rules.fact.LhTest;
import io.github.tiderule.rules.fact.Observation;
import io.github.tiderule.rules.fact.OvaryScan;
import io.github.tiderule.rules.fact.PregnancyScan;
import io.github.tiderule.rules.fact.Progesterone;
import io.github.tiderule.rules.fact.ProgesteroneBand;
import io.github.tiderule.rules.fact.Radiograph;
import io.github.tiderule.rules.fact.Sign;
import io.github.tiderule.rules.fact.Smear;
import io.github.tiderule.rules.fact.Vaginoscopy;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Names the observations of a cycle for people. */
public final class ObservationWords {

  private final CycleRecord cycle;
  private final Map<String, Observation> byId;

  /** Names the observations of one cycle. */
  public ObservationWords(CycleRecord cycle) {
    this.cycle = cycle;
    this.byId =
        cycle.observations().stream()
            .collect(Collectors.toMap(Observation::id, Function.identity()));
  }

  /** As in {@code the progesterone of Mon 11 Jan, 08:30 (p3)}; the id alone if it is not known. */
  public String of(String id) {
    Observation observation = byId.get(id);
    if (observation == null) {
      return id;
    }
    OffsetDateTime at = observation.at().atZone(cycle.zone()).toOffsetDateTime();
    return "the "
        + measured(observation)
        + " of "
        + LocalWords.shortDay(at.toLocalDate())
        + ", "
        + LocalWords.clock(at)
        + " ("
        + id
        + ")";
  }

  /** Several, with commas. */
  public String of(List<String> ids) {
    return ids.stream().map(this::of).collect(Collectors.joining(", "));
  }

  private static String measured(Observation observation) {
    if (observation instanceof Progesterone value) {
      String comparator = value.comparator() == null ? "" : value.comparator().word();
      String unit = value.statedUnit() == null ? "" : " " + value.statedUnit().word();
      return "progesterone " + comparator + plain(value.value()) + unit;
    }
    if (observation instanceof BodyTemperature reading) {
      return "temperature " + plain(reading.celsius()) + " degrees C";
    }
    return kind(observation);
  }

  /** What kind of observation it is, without what was measured. */
  static String kind(Observation observation) {
    if (observation instanceof Progesterone) {
      return "progesterone";
    }
    if (observation instanceof ProgesteroneBand) {
      return "progesterone band";
    }
    if (observation instanceof LhTest test) {
      return test.positive() ? "positive LH test" : "negative LH test";
    }
    if (observation instanceof Smear) {
      return "smear";
    }
    if (observation instanceof Vaginoscopy) {
      return "vaginoscopy";
    }
    if (observation instanceof Sign sign) {
      return "sign \"" + sign.sign().word() + "\"" + (sign.present() ? "" : " (not seen)");
    }
    if (observation instanceof OvaryScan) {
      return "ultrasound";
    }
    if (observation instanceof PregnancyScan scan) {
      return "pregnancy scan \"" + scan.finding().word() + "\"";
    }
    if (observation instanceof Radiograph) {
      return "radiograph";
    }
    if (observation instanceof BodyTemperature) {
      return "temperature";
    }
    return observation instanceof BreedingDone done ? done.semen().word() + " breeding" : "entry";
  }

  private static String plain(double value) {
    return value == Math.rint(value) && value < 1e9
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
