package io.github.tiderule.engine.season;

import io.github.tiderule.engine.patience.Patience;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.StageResult;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Moment;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.semen.Insemination;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What is on file of one season, with what it is evaluated by.
 *
 * @param asOf the moment the advice is for
 * @param zone the zone local days and clock times are counted in
 * @param observations in the order of time, then of id
 * @param insemination the semen in hand, where the file describes it
 */
public record Season(
    Tools tools,
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

  /** The same season with other semen, or other limits on its use. */
  public Season with(SemenPlan other) {
    return new Season(
        tools,
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

  /** The same season without what is held until somebody says that it is right. */
  Season without(Set<String> held) {
    boolean onset = held.contains(Question.FIRST_BLOOD);
    boolean past = held.contains(Question.EARLIER_CYCLES);
    return onset || past
        ? new Season(
            tools,
            asOf,
            zone,
            female,
            past ? List.of() : earlierCycles,
            treatments,
            onset ? FirstBlood.unknown() : firstBlood,
            observations,
            semenPlan,
            laboratory,
            outcome,
            insemination,
            background)
        : this;
  }

  public Clock clock() {
    return new Clock(zone);
  }

  /** The axis its times are counted on: from noon of first blood, or from the first observation. */
  public TimeAxis axis() {
    @Nullable Instant noon = firstNoon();
    return TimeAxis.from(noon == null ? firstTime() : noon);
  }

  /** Noon of the day of first blood; null where none is on file. */
  @Nullable Instant firstNoon() {
    return firstBlood.on() == null
        ? null
        : firstBlood.on().atTime(LocalTime.NOON).atZone(zone).toInstant();
  }

  private Instant firstTime() {
    return observations.isEmpty() ? asOf : observations.get(0).at();
  }

  /** Runs one stage of rules over some facts, with what every stage sees. */
  public StageRun run(Stage stage, List<?>... facts) {
    List<Object> all = new ArrayList<>();
    all.add(new Moment(asOf, zone));
    all.add(firstBlood);
    all.add(female);
    for (List<?> some : facts) {
      all.addAll(some);
    }
    Part part = Part.begun(stage.word());
    Patience.mustLast();
    StageResult result = tools.rules().run(stage, all);
    part.commit();
    return new StageRun(stage, result, tools.rules().account(stage, all, result));
  }
}
