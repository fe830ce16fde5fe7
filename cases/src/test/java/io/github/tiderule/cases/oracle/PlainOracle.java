package io.github.tiderule.cases.oracle;

import io.github.tiderule.rules.conclusion.FindingKind;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * What central rules ought to say of a season, worked out in plain Java from their titles and
 * parameters. It calls no rule and shares no code with them. Answers are sets of what each
 * conclusion is about: ids of observations, or days; for cautions, whether there is one.
 */
final class PlainOracle {

  private static final String YES = "yes";

  private final DrawnSeason season;
  private final Parameters parameters;
  private final LocalDate today;
  private final Says says = new Says();

  private PlainOracle(DrawnSeason season, Parameters parameters) {
    this.season = season;
    this.parameters = parameters;
    this.today = season.moment.asOf().atZone(DrawnSeason.ZONE).toLocalDate();
  }

  /** By rule, all rules that the oracle knows, also those that say nothing. */
  static Map<String, Set<String>> of(DrawnSeason season, Parameters parameters) {
    PlainOracle oracle = new PlainOracle(season, parameters);
    oracle.reading();
    new PlainFindings(season, parameters, oracle.says).reckon();
    oracle.days();
    oracle.next();
    oracle.care();
    return oracle.says.all();
  }

  private double value(String id) {
    return parameters.value(id);
  }

  private void say(String rule, Object... about) {
    says.say(rule, about);
  }

  private static LocalDate local(Instant at) {
    return at.atZone(DrawnSeason.ZONE).toLocalDate();
  }

  private void reading() {
    for (String rule : List.of("RDG-002", "RDG-004", "RDG-030", "RDG-031", "RDG-032")) {
      say(rule);
    }
    for (var report : season.reports) {
      boolean mass = report.statedUnit() == Unit.NG_PER_ML || report.statedUnit() == Unit.UG_PER_L;
      if (mass && report.value() > value("reading.ask-unit-above")) {
        say("RDG-002", report.id());
      }
    }
    season.bands.stream()
        .filter(band -> band.statedUnit() == null)
        .forEach(band -> say("RDG-004", band.id()));
    LocalDate blood = season.blood.on();
    for (Observation seen : season.observations()) {
      if (seen.at().isAfter(season.moment.asOf())) {
        say("RDG-030", seen.id());
      }
      if (blood == null) {
        long old = ChronoUnit.DAYS.between(local(seen.at()), today);
        if (old > value("reading.season.longest-days")) {
          say("RDG-032", seen.id());
        }
      } else {
        long before = ChronoUnit.DAYS.between(local(seen.at()), blood);
        if (before > value("reading.season.days-before-blood")
            && season.observations().stream().anyMatch(one -> !isOld(one, blood))) {
          say("RDG-031", seen.id());
        }
      }
    }
  }

  private boolean isOld(Observation seen, LocalDate blood) {
    return ChronoUnit.DAYS.between(local(seen.at()), blood)
        > value("reading.season.days-before-blood");
  }

  private boolean found(FindingKind kind) {
    return season.findings.stream().anyMatch(finding -> finding.kind() == kind);
  }

  private void each(String rule, boolean holds, Predicate<CandidateDay> suits) {
    say(rule);
    if (holds) {
      season.days.stream().filter(suits).forEach(day -> say(rule, day.day()));
    }
  }

  private void days() {
    Semen semen = season.semen.semen();
    Route route = season.semen.route();
    boolean vaginal = route == Route.NATURAL || route == Route.VAGINAL;
    double negligible = value("days.share.negligible");
    double most = season.days.stream().mapToDouble(CandidateDay::share).max().orElse(0);
    each("DAY-006", true, day -> day.share() == most && most >= negligible);
    each("DAY-007", true, day -> day.share() < negligible);
    each(
        "DAY-010",
        semen == Semen.CHILLED,
        day -> day.probabilityOvulated() < value("days.early.ovulated"));
    each(
        "DAY-011",
        semen == Semen.FROZEN,
        day -> day.daysAfterOvulation() < value("days.frozen.early-first"));
    each(
        "DAY-012",
        semen == Semen.NATURAL || semen == Semen.FRESH,
        day -> day.daysAfterOvulation() < value("days.natural.too-early"));
    each(
        "DAY-013",
        semen == Semen.FROZEN
            && !found(FindingKind.PROVEN_OVULATION)
            && !found(FindingKind.LATE_PRESENTATION),
        day -> !day.day().isAfter(today.plusDays((long) value("days.commit.days"))));
    Integer doses = season.semen.doses();
    each(
        "DAY-014",
        (semen == Semen.CHILLED || semen == Semen.FROZEN)
            && doses != null
            && doses == 1
            && season.forecast.width90Days() > value("days.commit.width"),
        day -> true);
    LocalDate blood = season.blood.on();
    each(
        "DAY-016",
        blood != null,
        day -> {
          long number = blood == null ? 0 : ChronoUnit.DAYS.between(blood, day.day());
          return number >= value("days.habit.first")
              && number <= value("days.habit.last")
              && day.daysAfterOvulation() < value("days.habit.before");
        });
    double veto = value("days.closed.veto");
    double oppose = value("days.closed.oppose");
    each("DAY-020", vaginal, day -> day.probabilityClosed() >= veto);
    each(
        "DAY-021",
        vaginal,
        day -> day.probabilityClosed() < veto && day.probabilityClosed() >= oppose);
    double late = value("days.intrauterine.late");
    double over = value("days.intrauterine.over");
    each(
        "DAY-022",
        !vaginal,
        day -> day.daysAfterOvulation() >= late && day.daysAfterOvulation() < over);
    each("DAY-023", !vaginal, day -> day.daysAfterOvulation() >= over);
  }

  private void caution(String rule, boolean holds) {
    say(rule);
    if (holds) {
      say(rule, YES);
    }
  }

  private void next() {
    caution(
        "NXT-030", found(FindingKind.LATE_PRESENTATION) && !found(FindingKind.DIOESTROUS_SHIFT));
    caution("NXT-031", found(FindingKind.SINGLE_SMEAR) && !found(FindingKind.LATE_PRESENTATION));
    caution("NXT-032", found(FindingKind.DIOESTROUS_SHIFT));
    caution("NXT-035", found(FindingKind.LH_SURGE));
    caution("NXT-036", found(FindingKind.PROVEN_OVULATION));
  }

  /** Whether a sign was last seen present; of two looks at one time, both count. */
  private boolean now(SignKind kind) {
    Optional<Instant> denied =
        season.signs.stream()
            .filter(sign -> sign.sign() == kind && !sign.present())
            .map(Sign::at)
            .max(Instant::compareTo);
    return season.signs.stream()
        .anyMatch(
            sign ->
                sign.sign() == kind
                    && sign.present()
                    && denied.map(at -> !at.isAfter(sign.at())).orElse(true));
  }

  private void care() {
    boolean unwell = now(SignKind.UNWELL);
    boolean foul = now(SignKind.FOUL_DISCHARGE);
    LocalDate blood = season.blood.on();
    long number = blood == null ? -1 : ChronoUnit.DAYS.between(blood, today);
    caution("CAR-010", unwell);
    caution(
        "CAR-011",
        unwell
            && number >= value("care.pyometra.first-day")
            && number <= value("care.pyometra.last-day"));
    caution("CAR-013", foul && unwell);
    caution("CAR-014", foul);
    caution(
        "CAR-021",
        season.treatments.stream()
            .anyMatch(
                treatment ->
                    treatment.kind() == TreatmentKind.DESLORELIN
                        && ChronoUnit.DAYS.between(treatment.on(), today)
                            <= value("care.implant.days")));
    caution("CAR-026", season.forecast.noOvulationProbability() >= value("care.no-ovulation"));
    caution("CAR-031", season.female.bornOn() == null);
  }
}
