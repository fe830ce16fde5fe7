package io.github.tiderule.engine.sheet;

import io.github.tiderule.engine.insemination.Reckoning;
import io.github.tiderule.engine.insemination.SemenInHand;
import io.github.tiderule.engine.insemination.Span;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.validation.Limits;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenLook;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
import io.github.tiderule.rules.semen.Insemination;
import io.github.tiderule.rules.semen.InseminationDay;
import io.github.tiderule.rules.semen.TemperaturePair;
import io.github.tiderule.rules.semen.UsableSperm;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Which semen a sheet is made for, and what is known of it. Of what the file describes it is the
 * kind the plan names; where the plan's kind is not described, frozen before chilled before fresh.
 */
final class SemenOnSheet {

  private static final double MILLION = 1e6;

  private final SemenPlan plan;
  private final @Nullable Insemination described;
  private final Semen kind;
  private final @Nullable SemenInHand inHand;
  private final double bodyHeatFromC;

  private SemenOnSheet(
      Parameters parameters,
      SemenPlan plan,
      @Nullable Insemination described,
      Semen kind,
      @Nullable SemenInHand inHand) {
    this.bodyHeatFromC = parameters.value("care.arrival.fahrenheit");
    this.plan = plan;
    this.described = described;
    this.kind = kind;
    this.inHand = inHand;
  }

  static SemenOnSheet of(Season season) {
    Parameters parameters = season.tools().rules().parameters();
    @Nullable Insemination described = season.insemination();
    SemenPlan plan = season.semenPlan();
    if (described == null) {
      return new SemenOnSheet(parameters, plan, null, plan.semen(), null);
    }
    List<Semen> there = kinds(described);
    Semen kind =
        there.isEmpty() || there.contains(plan.semen())
            ? plan.semen() == Semen.NATURAL ? Semen.FRESH : plan.semen()
            : there.get(0);
    return new SemenOnSheet(parameters, plan, described, kind, inHand(described, kind, parameters));
  }

  private static List<Semen> kinds(Insemination described) {
    List<Semen> kinds = new ArrayList<>();
    if (described.certificate() != null) {
      kinds.add(Semen.FROZEN);
    }
    if (described.arrival() != null) {
      kinds.add(Semen.CHILLED);
    }
    if (described.ejaculate() != null) {
      kinds.add(Semen.FRESH);
    }
    return kinds;
  }

  private static @Nullable SemenInHand inHand(
      Insemination described, Semen kind, Parameters parameters) {
    @Nullable Ejaculate ejaculate = described.ejaculate();
    @Nullable Arrival arrival = described.arrival();
    @Nullable Certificate certificate = described.certificate();
    return switch (kind) {
      case FROZEN -> certificate == null ? null : Reckoning.of(certificate, parameters);
      case CHILLED -> arrival == null ? null : Reckoning.of(arrival, parameters);
      case FRESH, NATURAL -> ejaculate == null ? null : Reckoning.of(ejaculate, parameters);
    };
  }

  Semen kind() {
    return kind;
  }

  /** Where it is placed: surgical insemination is planned as transcervical here as elsewhere. */
  Route route() {
    Route route = plan.route() == Route.NATURAL ? Route.usualFor(kind) : plan.route();
    return route == Route.SURGICAL ? Route.TRANSCERVICAL : route;
  }

  @Nullable SemenInHand inHand() {
    return inHand;
  }

  /** Into how many doses it is to be divided: as the file wants, or else one. */
  int doses() {
    Integer wanted = described == null ? null : described.wanted().doses();
    return wanted == null ? 1 : wanted;
  }

  /**
   * The semen's own temperature, in degrees Celsius, if measured. What a box shows that would be
   * ice or body heat is no temperature to bring anything to.
   */
  @Nullable Double temperatureC() {
    if (described == null) {
      return null;
    }
    return switch (kind) {
      case FRESH -> described.ejaculate() == null ? null : described.ejaculate().temperatureC();
      case CHILLED -> described.arrival() == null ? null : cool(described.arrival().temperatureC());
      case FROZEN, NATURAL -> null;
    };
  }

  private @Nullable Double cool(@Nullable Double celsius) {
    return celsius != null && celsius >= 0 && celsius < bodyHeatFromC ? celsius : null;
  }

  /**
   * The season with the dose that was counted, one way only: a dose the file names stays, what was
   * judged from the look is no count, and semen of another kind than planned is no dose of the
   * plan.
   */
  Season withDose(Season season) {
    if (plan.dose() != null || inHand == null || plan.semen() != kind) {
      return season;
    }
    return inHand
        .dose(doses())
        .map(dose -> season.with(season.semenPlan().dose(countable(dose))))
        .orElse(season);
  }

  /** More sperm than a dose can be said to hold are as good as the most it can. */
  private static Dose countable(Dose dose) {
    return dose.totalSperm() == null
        ? dose
        : dose.totalSperm(Math.min(dose.totalSperm(), Limits.SPERM.most()));
  }

  /** What the rules are told. */
  List<Object> facts() {
    List<Object> facts = new ArrayList<>();
    facts.add(new InseminationDay(kind, route()));
    if (described == null) {
      return facts;
    }
    usable().ifPresent(facts::add);
    if (kind == Semen.CHILLED && described.arrival() != null) {
      facts.add(described.arrival());
    }
    if (kind == Semen.FRESH && described.ejaculate() != null) {
      looks(described.ejaculate()).forEach(facts::add);
    }
    Double own = temperatureC();
    Double extender = described.extenderTemperatureC();
    if (own != null && extender != null) {
      facts.add(new TemperaturePair(own, extender));
    }
    return facts;
  }

  private Optional<UsableSperm> usable() {
    @Nullable Span usable = inHand == null ? null : inHand.usable();
    return usable == null
        ? Optional.empty()
        : Optional.of(
            new UsableSperm(
                kind,
                route(),
                usable.times(MILLION).least(),
                usable.times(MILLION).most(),
                doses()));
  }

  private static List<SemenLook> looks(Ejaculate ejaculate) {
    List<SemenLook> looks = new ArrayList<>();
    for (EjaculateFraction tube : ejaculate.fractions()) {
      if (tube.appearance() != null) {
        looks.add(new SemenLook(tube.appearance(), tube.fraction().bearsSperm()));
      }
    }
    return looks.stream().distinct().toList();
  }

  /** What is missing, or does not fit the plan, in words. */
  List<Sentence> notes() {
    List<Sentence> notes = new ArrayList<>();
    if (inHand == null) {
      notes.add(
          Sentence.of(
              "What the semen holds is not in the file yet; with volume, count, motility and normal"
                  + " forms the doses are reckoned."));
      return notes;
    }
    if (plan.semen() != kind) {
      notes.add(
          Sentence.of(
              "The plan is for {} semen, and what is described is {}: one of the two is not right,"
                  + " so the plan does not use this count.",
              plan.semen(),
              kind));
    }
    if (!inHand.missing().isEmpty()) {
      notes.add(
          Sentence.of(
              "Not known yet: {}.",
              new Part.Several(
                  inHand.missing().stream().map(Part::of).toList(), Part.Joint.SEMICOLONS)));
    }
    return notes;
  }
}
