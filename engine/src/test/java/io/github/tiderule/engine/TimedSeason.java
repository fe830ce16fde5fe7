package io.github.tiderule.engine;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.kennel.Background;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** An invented season of 2027 told in local times of one zone. */
final class TimedSeason {

  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");

  private final List<Observation> observations = new ArrayList<>();
  private final List<Availability> available = new ArrayList<>();
  private final FirstBlood firstBlood;
  private Semen semen = Semen.NATURAL;
  private Route route = Route.NATURAL;
  private @Nullable Integer doses;
  private @Nullable OrderTerms order;
  private @Nullable Double travelHours;
  private final List<Treatment> treatments = new ArrayList<>();
  private LaboratoryHours laboratory = LaboratoryHours.unknown();
  private Outcome outcome = Outcome.unknown();

  private TimedSeason(FirstBlood firstBlood) {
    this.firstBlood = firstBlood;
  }

  /** A season whose first blood was seen on a day, {@code 03-01}. */
  static TimedSeason from(String day) {
    return new TimedSeason(new FirstBlood(LocalDate.parse("2027-" + day), Certainty.SEEN));
  }

  /** A season nobody saw begin. */
  static TimedSeason unseen() {
    return new TimedSeason(new FirstBlood(null, Certainty.UNKNOWN));
  }

  /** A local time of the year, {@code 03-01T08:00}. */
  static Instant at(String local) {
    return LocalDateTime.parse("2027-" + local).atZone(ZONE).toInstant();
  }

  private String next(String letter) {
    return letter + (observations.size() + 1);
  }

  TimedSeason value(String at, double ngPerMl) {
    observations.add(
        Progesterone.of(ngPerMl, Unit.NG_PER_ML)
            .drawn(at(at))
            .withId(next("p"))
            .method(Method.RIA)
            .laboratory("A"));
    return this;
  }

  TimedSeason smear(String at, double cornifiedPercent, Neutrophils neutrophils) {
    observations.add(new Smear(next("c"), at(at), cornifiedPercent, neutrophils));
    return this;
  }

  TimedSeason bred(String at, Semen semen, Route route) {
    observations.add(new BreedingDone(next("m"), at(at), semen, route));
    return this;
  }

  TimedSeason lh(String at, boolean positive) {
    observations.add(new LhTest(next("l"), at(at), positive));
    return this;
  }

  TimedSeason sign(String at, SignKind sign) {
    observations.add(new Sign(next("s"), at(at), sign, true));
    return this;
  }

  TimedSeason scan(String at, ScanFinding finding, int fetuses) {
    observations.add(new PregnancyScan(next("u"), at(at), finding, List.of(), List.of(), fetuses));
    return this;
  }

  TimedSeason treated(String day) {
    treatments.add(new Treatment(TreatmentKind.PROGESTOGEN, LocalDate.parse("2027-" + day)));
    return this;
  }

  TimedSeason ended(Outcome outcome) {
    this.outcome = outcome;
    return this;
  }

  TimedSeason with(Semen semen, Route route, @Nullable Integer doses) {
    this.semen = semen;
    this.route = route;
    this.doses = doses;
    return this;
  }

  TimedSeason order(String cutOff, double transitHours, DayOfWeek... noDelivery) {
    order =
        new OrderTerms(
            LocalTime.parse(cutOff), transitHours, List.of(noDelivery), List.of(), List.of());
    return this;
  }

  TimedSeason collectedOn(String cutOff, double transitHours, DayOfWeek day) {
    order =
        new OrderTerms(
            LocalTime.parse(cutOff),
            transitHours,
            List.of(DayOfWeek.SUNDAY),
            List.of(),
            List.of(day));
    return this;
  }

  TimedSeason available(String from, String to) {
    available.add(new Availability(at(from), at(to)));
    return this;
  }

  TimedSeason travel(double hours) {
    travelHours = hours;
    return this;
  }

  TimedSeason turnaround(double hours) {
    laboratory = new LaboratoryHours(hours, List.of());
    return this;
  }

  CycleRecord asOf(String at) {
    return new CycleRecord(
        at(at),
        ZONE,
        Female.unknown(),
        List.of(),
        treatments,
        firstBlood,
        observations,
        new SemenPlan(semen, route, doses, null, null, null, available, order, travelHours),
        laboratory,
        outcome,
        null,
        Background.unknown());
  }
}
