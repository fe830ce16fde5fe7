package io.github.tiderule.cases.plans;

import io.github.tiderule.cases.cohort.Bitch;
import io.github.tiderule.cases.cohort.Bitches;
import io.github.tiderule.engine.Tiderule;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Breeds the females of a cohort in every way of the table. */
final class PlanStudy {

  private final Tiderule engine;
  private final long seed;

  PlanStudy(Tiderule engine, long seed) {
    this.engine = engine;
    this.seed = seed;
  }

  /**
   * How one female's season was bred.
   *
   * @param ours by our plan
   * @param thumbs by each rule of thumb; no dose where a rule never comes to a day
   */
  record Bred(
      Bitch bitch,
      Given.Season ours,
      Map<Thumb, List<Given>> thumbs,
      Blood.EverySecondDay everySecondDay) {}

  /** The first so many ovulating females of the cohort, each bred in every way of a row. */
  List<Bred> breed(Row row, int count) {
    List<Bitch> bitches = new ArrayList<>();
    for (int number = 0; bitches.size() < count; number++) {
      Bitch bitch = Bitches.draw(seed, number);
      if (bitch.ovulates()) {
        bitches.add(bitch);
      }
    }
    return bitches.parallelStream().map(bitch -> breed(row, bitch)).toList();
  }

  private Bred breed(Row row, Bitch bitch) {
    Blood blood = new Blood(bitch, seed);
    Blood.EverySecondDay tests = blood.everySecondDay();
    Map<Thumb, List<Given>> thumbs = new EnumMap<>(Thumb.class);
    for (Thumb thumb : Thumb.values()) {
      thumbs.put(thumb, thumb.doses(row, bitch.noticedAfter(), tests));
    }
    return new Bred(
        bitch, Keeper.breed(engine, row, blood), Collections.unmodifiableMap(thumbs), tests);
  }
}
