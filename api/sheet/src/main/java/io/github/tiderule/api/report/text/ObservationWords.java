package io.github.tiderule.api.report.text;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
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
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What people call the observations of a cycle. */
final class ObservationWords {

  private static final Texts TEXTS = Texts.ofReports();

  /** What a question may be about besides observations. */
  private static final Set<String> FIELDS =
      Set.of(
          Question.FIRST_BLOOD,
          Question.EARLIER_CYCLES,
          Question.BORN_ON,
          Question.LITTERS_WHELPED);

  /** Days of a season need no year, even where it lies across New Year. */
  private static final long NEAR_DAYS = 120;

  private final CycleRecord cycle;
  private final Words words;
  private final Map<String, Observation> byId;
  private final Set<String> alike = new HashSet<>();

  ObservationWords(CycleRecord cycle, Words words) {
    this.cycle = cycle;
    this.words = words;
    this.byId =
        cycle.observations().stream()
            .collect(Collectors.toMap(Observation::id, Function.identity()));
    Set<String> seen = new HashSet<>();
    for (Observation one : cycle.observations()) {
      String name = kind(one) + moment(one);
      if (!seen.add(name)) {
        alike.add(name);
      }
    }
  }

  /** What an id stands for that is no observation; the id alone where nothing is known of it. */
  static String field(String id) {
    return FIELDS.contains(id) ? TEXTS.say("field." + id) : id;
  }

  /** The observation of an id; absent where it is not known. */
  @Nullable Observation find(String id) {
    return byId.get(id);
  }

  /** Whether a day is of the year the season is told in, or of the same season. */
  boolean isOfThisYear(LocalDate day) {
    LocalDate today = cycle.asOf().atZone(cycle.zone()).toLocalDate();
    return day.getYear() == today.getYear()
        || Math.abs(ChronoUnit.DAYS.between(today, day)) < NEAR_DAYS;
  }

  /** As in {@code Mon 11 Jan 08:30}. */
  String moment(Observation observation) {
    OffsetDateTime at = at(observation);
    return words.shortDay(at.toLocalDate()) + " " + words.clock(at);
  }

  /** Whether kind and moment do not tell it from another. */
  boolean isAlike(Observation observation) {
    return alike.contains(kind(observation) + moment(observation));
  }

  /** As in {@code the progesterone 3.2 ng/mL of Mon 11 Jan, 08:30}. */
  String whole(Observation observation) {
    return TEXTS.say("observation.of", measured(observation), words.shortMoment(at(observation)));
  }

  private OffsetDateTime at(Observation observation) {
    return observation.at().atZone(cycle.zone()).toOffsetDateTime();
  }

  private String measured(Observation observation) {
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

  private String plain(double value) {
    return words.number(
        value == Math.rint(value) && value < 1e9
            ? Long.toString((long) value)
            : Double.toString(value));
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
}
