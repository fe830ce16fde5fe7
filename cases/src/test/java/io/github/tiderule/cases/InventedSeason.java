package io.github.tiderule.cases;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** An invented season, told in hours after the noon (UTC) of first blood. */
public final class InventedSeason {

  private static final LocalDate FIRST_BLOOD = LocalDate.of(2027, 1, 3);
  private static final Instant NOON = Instant.parse("2027-01-03T12:00:00Z");

  private final List<Observation> observations = new ArrayList<>();
  private Method method = Method.RIA;
  private String laboratory = "A";
  private SemenPlan semenPlan = SemenPlan.naturalUnlimited();

  /** The noon of first blood. */
  public static Instant noon() {
    return NOON;
  }

  /** The instant some days after the noon of first blood. */
  public static Instant day(double days) {
    return NOON.plus(Duration.ofSeconds(Math.round(days * 86_400)));
  }

  /** Days from the noon of first blood to an instant. */
  public static double days(Instant at) {
    return Duration.between(NOON, at).toSeconds() / 86_400.0;
  }

  /** From here on, values come from this laboratory and method. */
  public InventedSeason at(String laboratory, Method method) {
    this.laboratory = laboratory;
    this.method = method;
    return this;
  }

  /** What she is to be bred with. */
  public InventedSeason with(SemenPlan plan) {
    semenPlan = plan;
    return this;
  }

  /** A progesterone value in ng/mL. */
  public InventedSeason progesterone(double day, double ngPerMl) {
    return progesterone(day, ngPerMl, Unit.NG_PER_ML);
  }

  /** A progesterone value. */
  public InventedSeason progesterone(double day, double value, Unit unit) {
    observations.add(
        Progesterone.of(value, unit)
            .drawn(day(day))
            .withId("p" + (observations.size() + 1))
            .method(method)
            .laboratory(laboratory));
    return this;
  }

  /** A natural mating. */
  public InventedSeason mated(double day) {
    observations.add(
        new BreedingDone("m" + (observations.size() + 1), day(day), Semen.NATURAL, Route.NATURAL));
    return this;
  }

  /** A smear. */
  public InventedSeason smear(double day, double cornifiedPercent, Neutrophils neutrophils) {
    observations.add(
        new Smear("c" + (observations.size() + 1), day(day), cornifiedPercent, neutrophils));
    return this;
  }

  /** An LH test. */
  public InventedSeason lh(double day, boolean positive) {
    observations.add(new LhTest("l" + (observations.size() + 1), day(day), positive));
    return this;
  }

  /** The record as it stands some days after first blood. */
  public CycleRecord asOf(double day) {
    return CycleRecord.on(day(day), ZoneId.of("UTC"))
        .firstBlood(FirstBlood.seen(FIRST_BLOOD))
        .addAll(observations)
        .semen(semenPlan)
        .build();
  }
}
