package io.github.tiderule.rules;

import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Moment;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** Disorderly cycles drawn from a seed: anything a file may hold, sensible or not. */
final class SeededCycles {

  private static final String[] REPORTS = {
    "2,1 ng/ml", "5.2 ng/dl", "6.4 nmol/L", "8.8 µg/l", "see sheet", ""
  };

  private final Random random;

  private SeededCycles(long seed) {
    this.random = new Random(seed);
  }

  /** The facts of one cycle, observations among them. */
  static List<Object> of(long seed) {
    return new SeededCycles(seed).cycle();
  }

  private List<Object> cycle() {
    List<Object> facts = new ArrayList<>();
    facts.add(new Moment(FactLine.at(8 + random.nextInt(20)), FactLine.ZONE));
    facts.add(
        random.nextInt(5) == 0
            ? new FirstBlood(null, Certainty.UNKNOWN)
            : new FirstBlood(FactLine.date(0), pick(Certainty.values())));
    facts.add(Female.unknown());
    facts.add(SemenPlan.naturalUnlimited());
    if (random.nextInt(8) == 0) {
      facts.add(new Treatment(pick(TreatmentKind.values()), FactLine.date(-random.nextInt(150))));
    }
    int count = random.nextInt(12);
    for (int i = 0; i < count; i++) {
      facts.add(observation("o" + i));
    }
    return facts;
  }

  private Observation observation(String id) {
    Instant at = FactLine.at(random.nextInt(10) == 0 ? -40 : random.nextInt(24));
    return switch (random.nextInt(13)) {
      case 0 -> new LhTest(id, at, random.nextBoolean());
      case 1, 2 ->
          new Smear(
              id,
              at,
              maybe(() -> random.nextInt(101) * 1.0),
              maybe(() -> pick(Neutrophils.values())));
      case 3 -> new Vaginoscopy(id, at, pick(Folds.values()));
      case 4 -> new Sign(id, at, pick(SignKind.values()), random.nextBoolean());
      case 5 ->
          random.nextBoolean()
              ? new OvaryScan(id, at, pick(OvaryFinding.values()))
              : new BreedingDone(id, at, pick(Semen.values()), pick(Route.values()));
      case 6 ->
          new ProgesteroneBand(
              id,
              at,
              maybe(() -> random.nextInt(10) * 1.0),
              maybe(() -> random.nextInt(20) * 1.0),
              maybe(() -> pick(Unit.values())));
      case 7 -> ofPregnancy(id, at);
      default -> progesterone(id, at);
    };
  }

  private Observation ofPregnancy(String id, Instant at) {
    return switch (random.nextInt(3)) {
      case 0 ->
          new PregnancyScan(
              id,
              at,
              pick(ScanFinding.values()),
              List.of(),
              List.of(),
              maybe(() -> random.nextInt(4)));
      case 1 -> new Radiograph(id, at, maybe(() -> random.nextInt(4)), maybe(random::nextBoolean));
      default -> new BodyTemperature(id, at, 36.5 + random.nextInt(8) / 2.0);
    };
  }

  private Progesterone progesterone(String id, Instant at) {
    double[] values = {0, 0.2, 0.5, 0.95, 1.4, 2, 2, 2.9, 3.2, 5.1, 6.36, 9, 16, 28.3, 120};
    return new Progesterone(
        id,
        at,
        random.nextInt(4) == 0 ? at.plusSeconds(3600L * (random.nextInt(20) - 4)) : null,
        values[random.nextInt(values.length)],
        random.nextInt(6) == 0 ? pick(Comparator.values()) : null,
        random.nextInt(8) == 0 ? null : pick(Unit.values()),
        random.nextInt(3) == 0 ? pick(Method.values()) : Method.RIA,
        random.nextInt(3) == 0 ? "B" : "A",
        maybe(() -> pick(Specimen.values())),
        maybe(() -> pick(Tube.values())),
        random.nextInt(4) == 0 ? List.of(pick(Handling.values())) : List.of(),
        random.nextInt(4) == 0 ? REPORTS[random.nextInt(REPORTS.length)] : null);
  }

  private <T> T pick(T[] values) {
    return values[random.nextInt(values.length)];
  }

  private <T> @Nullable T maybe(java.util.function.Supplier<T> draw) {
    return random.nextInt(4) == 0 ? null : draw.get();
  }
}
