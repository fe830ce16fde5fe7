package io.github.tiderule.cases.odd;

import io.github.tiderule.engine.Tiderule;
import java.util.stream.IntStream;

/** Puts odd seasons to the engine. */
public final class OddStudy {

  private final Tiderule engine;
  private final Eggs eggs;
  private final long seed;

  OddStudy(Tiderule engine, long seed) {
    this.engine = engine;
    this.seed = seed;
    eggs = new Eggs(seed);
  }

  /** The first so many seasons of a kind that are tested at all. */
  KindScore score(Kind kind, int count) {
    return new KindScore(
        kind,
        IntStream.range(0, count)
            .parallel()
            .mapToObj(number -> Keeping.of(seed, kind, number))
            .map(season -> Verdict.of(engine, eggs, season))
            .toList());
  }
}
