package io.github.tiderule.engine;

import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.semen.Insemination;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Builds a record step by step. Nothing is refused on the way; {@link #build} ends in the record or
 * in all that is wrong at once. What is not said is not known, but first blood must be said, if
 * only that it is unknown. Not for use by many threads.
 */
public final class CycleBuilder {

  private Instant asOf;
  private final ZoneId zone;
  private final List<EarlierCycle> earlierCycles = new ArrayList<>();
  private final List<Treatment> treatments = new ArrayList<>();
  private final List<Observation> observations = new ArrayList<>();
  private Female female = Female.unknown();
  private @Nullable FirstBlood firstBlood;
  private @Nullable SemenPlan semenPlan;
  private LaboratoryHours laboratory = LaboratoryHours.unknown();
  private Outcome outcome = Outcome.unknown();
  private @Nullable Insemination insemination;
  private Background background = Background.unknown();

  CycleBuilder(Instant asOf, ZoneId zone) {
    this.asOf = asOf;
    this.zone = zone;
  }

  CycleBuilder(CycleRecord known) {
    this(known.asOf(), known.zone());
    earlierCycles.addAll(known.earlierCycles());
    treatments.addAll(known.treatments());
    observations.addAll(known.observations());
    female = known.female();
    firstBlood = known.firstBlood();
    semenPlan = known.semenPlan();
    laboratory = known.laboratory();
    outcome = known.outcome();
    insemination = known.insemination();
    background = known.background();
  }

  /** Another moment the advice is for. */
  public CycleBuilder asOf(Instant moment) {
    asOf = moment;
    return this;
  }

  /** The female. */
  public CycleBuilder female(Female known) {
    female = known;
    return this;
  }

  /** The first day of blood this season, or that it is unknown. */
  public CycleBuilder firstBlood(FirstBlood day) {
    firstBlood = day;
    return this;
  }

  /** One more earlier season. */
  public CycleBuilder add(EarlierCycle earlier) {
    earlierCycles.add(earlier);
    return this;
  }

  /** One more treatment. */
  public CycleBuilder add(Treatment treatment) {
    treatments.add(treatment);
    return this;
  }

  /**
   * One more observation. One without an id gets the first that is free of its kind: {@code p1} for
   * progesterone, {@code l1} for LH, {@code c1} for a smear, and so on.
   */
  public CycleBuilder add(Observation observation) {
    observations.add(observation);
    return this;
  }

  /** More observations, as {@link #add(Observation)} takes them. */
  public CycleBuilder addAll(List<? extends Observation> more) {
    observations.addAll(more);
    return this;
  }

  /** What she is to be bred with; natural mating, or the semen in hand, where nothing is said. */
  public CycleBuilder semen(SemenPlan plan) {
    semenPlan = plan;
    return this;
  }

  /** When the laboratory works. */
  public CycleBuilder laboratory(LaboratoryHours hours) {
    laboratory = hours;
    return this;
  }

  /** What became of the season. */
  public CycleBuilder outcome(Outcome known) {
    outcome = known;
    return this;
  }

  /** The semen in hand. */
  public CycleBuilder insemination(Insemination inHand) {
    insemination = inHand;
    return this;
  }

  /** Tests, the last litter and the male. */
  public CycleBuilder background(Background known) {
    background = known;
    return this;
  }

  /**
   * The record.
   *
   * @throws CycleRefused with all that is wrong
   */
  @SuppressWarnings("NullAway") // first blood that nobody named is refused with the rest
  public CycleRecord build() {
    return new CycleRecord(
        asOf,
        zone,
        female,
        earlierCycles,
        treatments,
        firstBlood,
        ObservationNames.named(observations),
        semenPlan == null ? SemenPlan.usualFor(described()) : semenPlan,
        laboratory,
        outcome,
        insemination,
        background);
  }

  private @Nullable Semen described() {
    return insemination == null ? null : insemination.described();
  }
}
