package io.github.tiderule.api.service;

import io.github.tiderule.api.record.Entry;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.SeasonText;
import io.github.tiderule.api.service.http.Hand;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleText;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.problem.Problem;
import java.time.Instant;
import java.util.List;

/** Reads what the record would hold, and refuses it with pointers into what was sent. */
public final class CycleCheck {

  private CycleCheck() {}

  /**
   * The season, if it is a good one.
   *
   * @param cycleFile the season as the record would hold it
   * @param part pointer to the part of it that was sent
   * @param sent pointer to that part in what was sent
   * @throws Refusal if it is not; problems elsewhere than in the part are said of what was sent as
   *     a whole
   */
  static CycleRecord read(String cycleFile, String part, String sent) {
    Reading reading = CycleText.read(cycleFile);
    if (reading instanceof Reading.Read read) {
      return read.cycle();
    }
    List<Problem> problems = ((Reading.Refused) reading).problems();
    throw Refusal.document(problems.stream().map(p -> moved(p, part, sent)).toList());
  }

  /** The season of the record as it is now. */
  public static CycleRecord season(Hand hand, Ledger ledger, Known.Season season) {
    List<Entry> current = ledger.entries().current(season.cycle().key());
    Instant moment = season.cycle().moment(hand.now());
    return read(
        SeasonText.of(moment, season.female(), season.cycle(), current), "/observations", "");
  }

  private static Problem moved(Problem problem, String part, String sent) {
    String path = problem.path();
    if (path.equals(part) || path.startsWith(part + "/")) {
      return new Problem(
          sent + path.substring(part.length()), problem.code(), problem.message(), problem.hint());
    }
    return new Problem(
        "",
        problem.code(),
        "with it, the record has at " + path + ": " + problem.message(),
        problem.hint());
  }
}
