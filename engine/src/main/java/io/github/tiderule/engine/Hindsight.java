package io.github.tiderule.engine;

import io.github.tiderule.engine.validation.SeasonDates;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.kennel.Stud;
import io.github.tiderule.rules.semen.Insemination;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A season as it was known at an earlier moment. */
final class Hindsight {

  private final CycleRecord cycle;
  private final Instant moment;
  private final LocalDate today;

  Hindsight(CycleRecord cycle, Instant moment) {
    this.cycle = cycle;
    this.moment = moment;
    this.today = moment.atZone(cycle.zone()).toLocalDate();
  }

  /** The record without what came later. */
  CycleRecord cycle() {
    return new CycleRecord(
        moment,
        cycle.zone(),
        female(),
        cycle.earlierCycles().stream().flatMap(one -> earlier(one).stream()).toList(),
        cycle.treatments().stream().flatMap(one -> treatment(one).stream()).toList(),
        past(cycle.firstBlood().on()) == null ? FirstBlood.unknown() : cycle.firstBlood(),
        cycle.observations().stream().filter(one -> !known(one).isAfter(moment)).toList(),
        cycle.semenPlan(),
        cycle.laboratory(),
        Outcome.unknown(),
        insemination(),
        background());
  }

  private @Nullable LocalDate past(@Nullable LocalDate day) {
    return day == null || day.isAfter(today) ? null : day;
  }

  private static Instant known(Observation observation) {
    return observation instanceof Progesterone value && value.reportedAt() != null
        ? value.reportedAt()
        : observation.at();
  }

  private Female female() {
    Female known = cycle.female();
    return new Female(
        known.id(),
        known.name(),
        known.breed(),
        known.bodyMassKg(),
        past(known.bornOn()),
        known.littersWhelped(),
        known.caesareans(),
        known.missedPregnancies());
  }

  private Optional<Treatment> treatment(Treatment one) {
    return one.on().isAfter(today)
        ? Optional.empty()
        : Optional.of(
            new Treatment(one.kind(), one.on(), one.form(), one.purpose(), past(one.removedOn())));
  }

  private Optional<EarlierCycle> earlier(EarlierCycle one) {
    boolean whelpedLater = one.whelpedOn() != null && past(one.whelpedOn()) == null;
    return one.firstBloodOn().isAfter(today)
        ? Optional.empty()
        : Optional.of(
            new EarlierCycle(
                one.firstBloodOn(),
                past(one.ovulatedOn()),
                past(one.dioestrusOn()),
                past(one.whelpedOn()),
                whelpedLater ? null : one.litterSize(),
                one.pregnant(),
                one.kind()));
  }

  /** The semen in hand, unless it belongs to a day too far ahead to be spoken of. */
  private @Nullable Insemination insemination() {
    @Nullable Insemination known = cycle.insemination();
    return known == null || times(known).anyMatch(this::isFarAhead) ? null : known;
  }

  private static Stream<Instant> times(Insemination known) {
    return Stream.of(
            Optional.ofNullable(known.at()),
            Optional.ofNullable(known.ejaculate()).map(one -> one.collectedAt()),
            Optional.ofNullable(known.arrival()).map(one -> one.collectedAt()),
            Optional.ofNullable(known.arrival()).map(one -> one.arrivedAt()))
        .flatMap(Optional::stream);
  }

  private boolean isFarAhead(Instant at) {
    LocalDate last = today.plusDays(SeasonDates.DAYS_AHEAD);
    return at.atZone(cycle.zone()).toLocalDate().isAfter(last);
  }

  private Background background() {
    Background known = cycle.background();
    @Nullable Stud stud = known.stud();
    return new Background(
        known.asked(),
        past(known.lastWhelpedOn()),
        known.tests().stream().filter(one -> !one.on().isAfter(today)).toList(),
        stud == null
            ? null
            : new Stud(
                stud.name(),
                stud.breed(),
                stud.bodyMassKg(),
                past(stud.bornOn()),
                stud.provenSire()));
  }
}
