package io.github.tiderule.engine.validation;

import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.semen.Insemination;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The check of a whole record, part by part. Everything may be null here, as it comes from callers
 * whose compiler does not look; what must not be is then a violation.
 */
public final class CycleValidation {

  private final Place record = new Place("", new ArrayList<>());
  private final SeasonDates dates;
  private final @Nullable LocalDate firstBloodOn;

  /** Begins with what every date is held against. */
  public CycleValidation(
      @Nullable Instant asOf, @Nullable ZoneId zone, @Nullable FirstBlood firstBlood) {
    boolean known = record.has("zone", zone) && zone != null && isKnown(zone);
    @Nullable ZoneId usable = known ? zone : null;
    dates = new SeasonDates(moment(asOf, usable), usable);
    firstBloodOn = firstBlood == null ? null : firstBlood.on();
    if (record.has("firstBlood", firstBlood) && firstBlood != null) {
      check(record.of("firstBlood"), firstBlood);
    }
  }

  private boolean isKnown(ZoneId zone) {
    boolean known = SeasonDates.isZone(zone.getId());
    if (!known) {
      record.note(SeasonDates.unknownZone(zone.getId()));
    }
    return known;
  }

  /** The moment dates are held against; null, with a violation noted, where it is none. */
  private @Nullable Instant moment(@Nullable Instant asOf, @Nullable ZoneId zone) {
    if (!record.has("asOf", asOf) || asOf == null) {
      return null;
    }
    int before = record.found().size();
    record.note(new SeasonDates(null, zone).ofAnyYear("asOf", asOf));
    return record.found().size() == before ? asOf : null;
  }

  private void check(Place place, FirstBlood firstBlood) {
    place.has("certainty", firstBlood.certainty());
    if (SeasonConsistency.needsDay(firstBlood.certainty())) {
      place.has("on", firstBlood.on());
    }
    place.day("on", firstBlood.on(), dates::pastOfSeason);
  }

  /** Checks the female and what she went through before. */
  public CycleValidation female(
      @Nullable Female female,
      @Nullable List<EarlierCycle> earlierCycles,
      @Nullable List<Treatment> treatments) {
    HistoryValidation history = new HistoryValidation(dates);
    if (record.has("female", female) && female != null) {
      history.check(record.of("female"), female);
    }
    record.parts(
        "earlierCycles",
        earlierCycles,
        Limits.EARLIER_CYCLES,
        (place, one) -> history.check(place, one, firstBloodOn));
    record.parts("treatments", treatments, Limits.TREATMENTS, history::check);
    return this;
  }

  /** Checks the observations. */
  public CycleValidation observations(@Nullable List<Observation> observations) {
    ObservationValidation check = new ObservationValidation(dates);
    record.parts("observations", observations, Limits.OBSERVATIONS, check::check);
    return this;
  }

  /** Checks what she is to be bred with, and the semen in hand. */
  public CycleValidation semen(@Nullable SemenPlan semenPlan, @Nullable Insemination insemination) {
    if (record.has("semenPlan", semenPlan) && semenPlan != null) {
      new SemenPlanValidation(dates).check(record.of("semenPlan"), semenPlan);
    }
    if (insemination != null) {
      new InseminationValidation(dates).check(record.of("insemination"), insemination);
    }
    return this;
  }

  /** Checks when the laboratory works. */
  public CycleValidation laboratory(@Nullable LaboratoryHours laboratory) {
    if (record.has("laboratory", laboratory) && laboratory != null) {
      Place place = record.of("laboratory");
      place.number("turnaroundHours", laboratory.turnaroundHours(), Limits.TURNAROUND);
      place.words("opensOn", laboratory.opensOn());
    }
    return this;
  }

  /** Checks what became of the season. */
  public CycleValidation outcome(@Nullable Outcome outcome) {
    if (record.has("outcome", outcome) && outcome != null) {
      new HistoryValidation(dates).check(record.of("outcome"), outcome, firstBloodOn);
    }
    return this;
  }

  /** Checks the time before the season. */
  public CycleValidation background(@Nullable Background background) {
    if (record.has("background", background) && background != null) {
      new BackgroundValidation(dates).check(record.of("background"), background);
    }
    return this;
  }

  /** All that was found, in the order of the checks. */
  public List<Violation> violations() {
    return List.copyOf(record.found());
  }
}
