package io.github.tiderule.engine;

import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.semen.Insemination;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything known about one female's season at one moment.
 *
 * @param asOf the moment the advice is for; the engine reads no clock
 * @param zone the zone local days and clock times are counted in
 * @param outcome what became of the season, as far as it is known
 * @param observations kept in the order of time, then of id, whatever order they come in
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
   * @throws IllegalArgumentException if two observations share an id
   */
  public CycleRecord {
    earlierCycles =
        earlierCycles.stream().sorted(Comparator.comparing(EarlierCycle::firstBloodOn)).toList();
    treatments =
        treatments.stream()
            .sorted(Comparator.comparing(Treatment::on).thenComparing(Treatment::kind))
            .toList();
    observations =
        observations.stream()
            .sorted(Comparator.comparing(Observation::at).thenComparing(Observation::id))
            .toList();
    long ids = observations.stream().map(Observation::id).distinct().count();
    if (ids < observations.size()) {
      throw new IllegalArgumentException("two observations share an id");
    }
  }

  /** The same season with other semen, or other limits on its use. */
  public CycleRecord with(SemenPlan other) {
    return new CycleRecord(
        asOf,
        zone,
        female,
        earlierCycles,
        treatments,
        firstBlood,
        observations,
        other,
        laboratory,
        outcome,
        insemination,
        background);
  }

  /** The same season seen at another moment. */
  public CycleRecord asOf(Instant moment) {
    return new CycleRecord(
        moment,
        zone,
        female,
        earlierCycles,
        treatments,
        firstBlood,
        observations,
        semenPlan,
        laboratory,
        outcome,
        insemination,
        background);
  }

  /**
   * The same season as it was known at an earlier moment: without what was seen, drawn or reported
   * after it, and without its outcome. A result that does not say when it was reported counts as
   * known when it was drawn.
   */
  public CycleRecord knownAt(Instant moment) {
    return new CycleRecord(
        moment,
        zone,
        female,
        earlierCycles,
        treatments,
        firstBlood,
        observations.stream().filter(one -> !known(one).isAfter(moment)).toList(),
        semenPlan,
        laboratory,
        Outcome.unknown(),
        insemination,
        background);
  }

  private static Instant known(Observation observation) {
    return observation instanceof Progesterone value && value.reportedAt() != null
        ? value.reportedAt()
        : observation.at();
  }
}
