package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.StudPlan;
import io.github.tiderule.engine.days.StudServices;
import io.github.tiderule.engine.plan.Breeding;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.validation.Limits;
import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Evaluates several females for the services of one stud and shares these among them. */
final class StudDivision {

  /** A service is planned as a window of this length. */
  private static final Duration WINDOW = Duration.ofMinutes(15);

  private final Tools tools;

  StudDivision(Tools tools) {
    this.tools = tools;
  }

  StudPlan divide(Map<String, CycleRecord> cycles, List<Instant> services) {
    SortedMap<String, CycleRecord> byName = new TreeMap<>(cycles);
    List<StudServices.Candidate> candidates = new ArrayList<>();
    List<StudPlan.LeftOut> leftOut = new ArrayList<>();
    byName.forEach(
        (name, cycle) -> {
          Evaluation evaluation = Evaluation.of(tools, withServices(name, cycle, services));
          Breeding breeding = evaluation.planned().breeding();
          if (breeding == null) {
            leftOut.add(new StudPlan.LeftOut(name, evaluation.advice().action().headline()));
          } else {
            candidates.add(
                new StudServices.Candidate(name, breeding.table(), breeding.forbidden()));
          }
        });
    StudPlan plan =
        StudServices.divide(services, candidates, tools.value("planning.worth-another"));
    return new StudPlan(plan.services(), plan.parts(), leftOut, plan.total());
  }

  private static CycleRecord withServices(String name, CycleRecord cycle, List<Instant> services) {
    SemenPlan said = cycle.semenPlan();
    if (said.semen() != Semen.NATURAL && said.semen() != Semen.FRESH) {
      throw new IllegalArgumentException(
          name + " is to be bred with " + said.semen().word() + " semen, not by a service");
    }
    for (Instant service : services) {
      if (service.isBefore(cycle.asOf())) {
        throw new IllegalArgumentException(
            "the service of " + service + " lies before the moment of " + name);
      }
    }
    // whatever is divided, no plan holds more doses than can be planned for one female
    @Nullable Integer doses =
        said.semen() == Semen.NATURAL
            ? null
            : Integer.valueOf((int) Math.min(services.size(), Limits.DOSES.most()));
    return cycle.with(
        new SemenPlan(
            said.semen(),
            said.route(),
            doses,
            null,
            null,
            said.dose(),
            services.stream().map(service -> window(service, cycle.zone())).toList(),
            null));
  }

  /** A window about a service that lies in one half of its local day. */
  private static Availability window(Instant service, ZoneId zone) {
    Instant until = service.plus(WINDOW);
    LocalDate day = service.atZone(zone).toLocalDate();
    Instant noon = day.atTime(LocalTime.NOON).atZone(zone).toInstant();
    Instant midnight = day.plusDays(1).atStartOfDay(zone).toInstant();
    boolean crosses = (service.isBefore(noon) && until.isAfter(noon)) || until.isAfter(midnight);
    return crosses
        ? new Availability(service.minus(WINDOW), service)
        : new Availability(service, until);
  }
}
