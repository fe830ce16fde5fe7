package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.plan.Planned;
import io.github.tiderule.engine.pregnancy.PregnancyCourse;
import io.github.tiderule.engine.season.Care;
import io.github.tiderule.engine.season.Dated;
import io.github.tiderule.engine.season.Part;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.engine.season.SeasonAhead;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.engine.season.Standing;
import io.github.tiderule.engine.season.Tools;
import io.github.tiderule.engine.sheet.SheetMaking;
import io.github.tiderule.engine.testing.Tested;
import io.github.tiderule.engine.testing.Testing;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.OwnTemperature;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * One season on its way: read, dated, planned, tested, each holding the one before, and then told.
 *
 * @param planned the days of the season, for whoever shares a stud among several
 */
record Evaluation(Planned planned, Reasoning reasoning) {

  static Evaluation of(Tools tools, CycleRecord cycle) {
    return of(tools, cycle, true);
  }

  /**
   * @param rereads whether a result that is asked about is tried in each way it can be read
   */
  private static Evaluation of(Tools tools, CycleRecord cycle, boolean rereads) {
    Part whole = Part.begun("whole");
    SheetMaking sheet = SheetMaking.of(filed(tools, cycle));
    Read first = Read.of(sheet.season());
    @Nullable Dated dated = Dated.of(first);
    Read read = dated == null ? first : dated.read();
    @Nullable PregnancyCourse course = dated == null ? null : PregnancyCourse.of(dated);
    List<?> facts = facts(read, dated, course);
    StageRun safety = read.season().run(Stage.SAFETY, facts);
    Planned planned = Planned.of(Standing.of(read, dated, safety));
    Tested tested = Testing.next(planned);
    boolean sheetWanted = sheet.wanted(planned);
    Care care =
        Care.of(
            safety,
            read.season().run(Stage.COURSE, facts),
            read.season().run(Stage.SHEET, facts, sheet.facts(sheetWanted)),
            read.season().run(Stage.NOTES, facts));
    Answer answer =
        new Answer(tested, course, care, sheetWanted ? sheet.sheet(care, planned) : null);
    Reasoning reasoning =
        answer.reasoning(
            then -> of(tools, carrying(cycle.knownAt(then)), false).advice(),
            rereads ? new Rereading(cycle, other -> of(tools, other, false).advice()) : null);
    whole.commit();
    return new Evaluation(planned, reasoning);
  }

  /** The same season of one who is known to have whelped later. */
  private static CycleRecord carrying(CycleRecord then) {
    return then.toBuilder().outcome(Outcome.unknown().pregnant(true)).build();
  }

  Advice advice() {
    return reasoning.advice();
  }

  /** The season as it is on file. */
  private static Season filed(Tools tools, CycleRecord cycle) {
    return new Season(
        tools,
        cycle.asOf(),
        cycle.zone(),
        cycle.female(),
        cycle.earlierCycles(),
        cycle.treatments(),
        cycle.firstBlood(),
        cycle.observations(),
        cycle.semenPlan(),
        cycle.laboratory(),
        cycle.outcome(),
        cycle.insemination(),
        cycle.background());
  }

  /** What the stages of care see. */
  private static List<?> facts(Read read, @Nullable Dated dated, @Nullable PregnancyCourse course) {
    Season season = read.season();
    return Stream.<List<?>>of(
            read.accepted(),
            read.levels(),
            read.findings(),
            dated == null ? List.of() : List.of(dated.forecast()),
            course == null ? List.of() : course.caesareanDays(),
            season.earlierCycles(),
            season.treatments(),
            List.of(season.semenPlan(), season.outcome()),
            SeasonAhead.facts(season),
            OwnTemperature.of(read.accepted()))
        .flatMap(List::stream)
        .toList();
  }
}
