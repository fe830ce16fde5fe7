package io.github.tiderule.cases.cohort;

import io.github.tiderule.engine.Tiderule;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Puts the seasons of a cohort to the engine. */
final class Study {

  /** A habit that keeps fewer seasons than one in so many finds no cohort. */
  private static final int SCARCEST = 60;

  private final Tiderule engine;
  private final long seed;

  Study(Tiderule engine, long seed) {
    this.engine = engine;
    this.seed = seed;
  }

  /**
   * The first so many seasons of ovulating females that a habit keeps, in the order of the cohort.
   *
   * @throws IllegalStateException if the habit keeps hardly any
   */
  List<Season> seasons(SamplingHabit habit, int count) {
    List<Season> seasons = new ArrayList<>();
    for (int number = 0; seasons.size() < count; number++) {
      if (number > SCARCEST * count) {
        throw new IllegalStateException(habit.words() + " keeps too few seasons");
      }
      Bitch bitch = Bitches.draw(seed, number);
      if (bitch.ovulates()) {
        habit.sample(bitch, Draws.of(seed + 1, number)).ifPresent(seasons::add);
      }
    }
    return seasons;
  }

  /** The engine's answers, in the order of the seasons. */
  List<Answer> answers(List<Season> seasons) {
    return IntStream.range(0, seasons.size())
        .parallel()
        .mapToObj(i -> new Answer(seasons.get(i), engine.advise(seasons.get(i).cycle())))
        .toList();
  }
}
