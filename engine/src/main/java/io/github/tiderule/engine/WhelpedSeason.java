package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.course.LookBack;
import java.util.List;
import java.util.Objects;

/**
 * A past season whose whelping is known.
 *
 * @param female what she is called, or an empty text
 */
public record WhelpedSeason(String female, LookBack lookBack) {

  /** The season of a cycle. */
  public static WhelpedSeason of(CycleRecord cycle, LookBack lookBack) {
    return new WhelpedSeason(
        Objects.requireNonNullElse(
            cycle.female().name(), Objects.requireNonNullElse(cycle.female().id(), "")),
        lookBack);
  }

  /** How well some seasons were foretold. */
  public static Accuracy accuracy(List<WhelpedSeason> seasons) {
    return Accuracy.of(
        seasons.stream()
            .map(one -> new Accuracy.Season(one.lookBack().errorDays(), one.lookBack().within()))
            .toList());
  }
}
