package io.github.tiderule.api.report.text;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Names the observations of a cycle for people. */
public final class ObservationWords {

  private static final Texts TEXTS = Texts.ofReports();

  /** What a question may be about besides observations. */
  private static final Set<String> FIELDS =
      Set.of(
          Question.FIRST_BLOOD,
          Question.EARLIER_CYCLES,
          Question.BORN_ON,
          Question.LITTERS_WHELPED);

  private final CycleRecord cycle;
  private final Map<String, Observation> byId;

  /** Names the observations of one cycle. */
  public ObservationWords(CycleRecord cycle) {
    this.cycle = cycle;
    this.byId =
        cycle.observations().stream()
            .collect(Collectors.toMap(Observation::id, Function.identity()));
  }

  /** Who a report is about. */
  public static String who(@Nullable String name, @Nullable String id) {
    return name != null ? name : id != null ? id : TEXTS.say("report.unnamed");
  }

  /** As in {@code the progesterone of Mon 11 Jan, 08:30 (p3)}; the id alone if it is not known. */
  public String of(String id) {
    Observation observation = byId.get(id);
    if (observation == null) {
      return FIELDS.contains(id) ? TEXTS.say("field." + id) : id;
    }
    OffsetDateTime at = observation.at().atZone(cycle.zone()).toOffsetDateTime();
    return TEXTS.say(
        "observation.of",
        measured(observation),
        LocalWords.shortDay(at.toLocalDate()),
        LocalWords.clock(at),
        id);
  }

  /** Several, with commas. */
  public String of(List<String> ids) {
    return ids.stream().map(this::of).collect(Collectors.joining(", "));
  }

  private static String measured(Observation observation) {
    if (observation instanceof Progesterone value) {
      String comparator = value.comparator() == null ? "" : value.comparator().word();
      String unit = value.statedUnit() == null ? "" : " " + value.statedUnit().word();
      return TEXTS.say("observation.progesterone.value", comparator + plain(value.value()) + unit);
    }
    if (observation instanceof BodyTemperature reading) {
      return TEXTS.say("observation.temperature.value", plain(reading.celsius()));
    }
    return kind(observation);
  }

  /** What kind of observation it is, without what was measured. */
  static String kind(Observation observation) {
    if (observation instanceof Progesterone) {
      return TEXTS.say("observation.progesterone");
    }
    if (observation instanceof ProgesteroneBand) {
      return TEXTS.say("observation.band");
    }
    if (observation instanceof LhTest test) {
      return TEXTS.say(test.positive() ? "observation.lh.positive" : "observation.lh.negative");
    }
    if (observation instanceof Smear) {
      return TEXTS.say("observation.smear");
    }
    if (observation instanceof Vaginoscopy) {
      return TEXTS.say("observation.vaginoscopy");
    }
    if (observation instanceof Sign sign) {
      return TEXTS.say(
          sign.present() ? "observation.sign" : "observation.sign.absent", sign.sign().word());
    }
    if (observation instanceof OvaryScan) {
      return TEXTS.say("observation.ultrasound");
    }
    if (observation instanceof PregnancyScan scan) {
      return TEXTS.say("observation.scan", scan.finding().word());
    }
    if (observation instanceof Radiograph) {
      return TEXTS.say("observation.radiograph");
    }
    if (observation instanceof BodyTemperature) {
      return TEXTS.say("observation.temperature");
    }
    return observation instanceof BreedingDone done
        ? TEXTS.say("observation.breeding", done.semen().word())
        : TEXTS.say("observation.entry");
  }

  private static String plain(double value) {
    return value == Math.rint(value) && value < 1e9
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
