package io.github.tiderule.engine;

import io.github.tiderule.engine.validation.CycleValidation;
import io.github.tiderule.engine.validation.Violation;
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
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything known about one female's season at one moment, and nothing that cannot be: whatever
 * makes a record is checked as a cycle file is.
 *
 * @param asOf the moment the advice is for, in the years 2000 to 2060; the engine reads no clock
 * @param zone the zone of the tz database that local days and clock times are counted in
 * @param earlierCycles at most 50, kept in the order of first blood
 * @param treatments at most 100, kept in the order of days
 * @param outcome what became of the season, as far as it is known
 * @param observations at most 500, each with an id of its own, from 400 days before {@code asOf} to
 *     60 after it; kept in the order of time, then of id, whatever order they come in
 * @param insemination the semen in hand, where the file describes it
 * @param background tests, last litter and the male
 */
public record CycleRecord(
    Instant asOf,
    ZoneId zone,
    Female female,
    List<EarlierCycle> earlierCycles,
    List<Treatment> treatments,
    FirstBlood firstBlood,
    List<Observation> observations,
    SemenPlan semenPlan,
    LaboratoryHours laboratory,
    Outcome outcome,
    @Nullable Insemination insemination,
    Background background) {

  /** A season of which nothing is known beyond its observations. */
  public CycleRecord(
      Instant asOf,
      ZoneId zone,
      Female female,
      List<EarlierCycle> earlierCycles,
      List<Treatment> treatments,
      FirstBlood firstBlood,
      List<Observation> observations,
      SemenPlan semenPlan,
      LaboratoryHours laboratory) {
    this(
        asOf,
        zone,
        female,
        earlierCycles,
        treatments,
        firstBlood,
        observations,
        semenPlan,
        laboratory,
        Outcome.unknown(),
        null,
        Background.unknown());
  }

  /**
   * Checks everything at once.
   *
   * @throws CycleRefused with all that is wrong, such as a number outside its limits
   */
  public CycleRecord {
    List<Violation> violations =
        new CycleValidation(asOf, zone, firstBlood)
            .female(female, earlierCycles, treatments)
            .observations(observations)
            .semen(semenPlan, insemination)
            .laboratory(laboratory)
            .outcome(outcome)
            .background(background)
            .violations();
    refuse(violations);
    earlierCycles =
        earlierCycles.stream().sorted(Comparator.comparing(EarlierCycle::firstBloodOn)).toList();
    treatments =
        treatments.stream()
            .sorted(
                Comparator.comparing(Treatment::on)
                    .thenComparing(Treatment::kind)
                    .thenComparing(Treatment::toString))
            .toList();
    observations =
        observations.stream()
            .sorted(Comparator.comparing(Observation::at).thenComparing(Observation::id))
            .toList();
  }

  /**
   * Begins a record that is built step by step.
   *
   * @param asOf the moment the advice is for, in the years 2000 to 2060
   * @param zone of the tz database; local days and clock times are counted in it
   */
  public static CycleBuilder on(Instant asOf, ZoneId zone) {
    return new CycleBuilder(asOf, zone);
  }

  /**
   * The same season with other semen, or other limits on its use.
   *
   * @throws CycleRefused if the plan holds what no plan can hold
   */
  public CycleRecord with(SemenPlan other) {
    return toBuilder().semen(other).build();
  }

  /**
   * The same season seen at another moment.
   *
   * @throws CycleRefused if something in it cannot be of a season at that moment
   */
  public CycleRecord asOf(Instant moment) {
    return toBuilder().asOf(moment).build();
  }

  /** A builder that holds all that is known here, to be changed and built again. */
  public CycleBuilder toBuilder() {
    return new CycleBuilder(this);
  }

  /**
   * The same season as it was known at an earlier moment: without what was seen, drawn, reported,
   * given or tested after it, and without its outcome. A result that does not say when it was
   * reported counts as known when it was drawn.
   *
   * @throws CycleRefused if no advice can be for such a moment
   */
  public CycleRecord knownAt(Instant moment) {
    refuse(new CycleValidation(moment, zone, FirstBlood.unknown()).violations());
    return new Hindsight(this, moment).cycle();
  }

  private static void refuse(List<Violation> violations) {
    if (!violations.isEmpty()) {
      throw new CycleRefused(violations);
    }
  }
}
