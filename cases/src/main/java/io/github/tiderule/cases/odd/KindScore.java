package io.github.tiderule.cases.odd;

import java.util.List;
import java.util.function.Predicate;

/**
 * How the seasons of one kind fared.
 *
 * @param seasons the verdicts of each season, in time order
 */
record KindScore(Kind kind, List<List<Verdict>> seasons) {

  KindScore {
    seasons = List.copyOf(seasons);
  }

  /** Share of seasons with such an answer on any evening. */
  double share(Predicate<Verdict> is) {
    return count(is) / (double) seasons.size();
  }

  /** Seasons with such an answer on any evening. */
  long count(Predicate<Verdict> is) {
    return seasons.stream().filter(season -> season.stream().anyMatch(is)).count();
  }

  /** Seasons in which something is doubted on the last evening. */
  double doubtedAtLast() {
    return seasons.stream().filter(s -> s.get(s.size() - 1).doubt()).count()
        / (double) seasons.size();
  }

  /** Seasons in which the engine was asked. */
  int count() {
    return seasons.size();
  }

  /** Evenings on which it was asked. */
  long answers() {
    return seasons.stream().mapToLong(List::size).sum();
  }

  /** Of all answers that tell an interval without a doubt, those more than a day off. */
  double outsideOfDated() {
    long dated = seasons.stream().flatMap(List::stream).filter(Verdict::dated).count();
    long outside = seasons.stream().flatMap(List::stream).filter(Verdict::outside).count();
    return dated == 0 ? 0 : outside / (double) dated;
  }
}
