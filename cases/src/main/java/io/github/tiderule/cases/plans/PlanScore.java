package io.github.tiderule.cases.plans;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What a row of the table comes to, as means over its seasons.
 *
 * @param ours share of eggs met by our plan
 * @param knowing share met by the plan that knows the true ovulation
 * @param curve share met by one who knows the whole curve; not a number with more than one dose
 * @param thumbs shares met by the rules of thumb, in the order of {@link Thumb}
 * @param tests times she was tested until our plan was committed to
 * @param alsoLh how often that blood was tested for LH besides progesterone
 * @param untilPastFive tests on every second day until the first value above 5
 * @param untilProven tests on every second day until a proven rise
 * @param firstAfter days from true ovulation to our first dose
 * @param firstSd its standard deviation
 * @param doses doses or matings given by our plan
 * @param never seasons that our plan let pass
 */
record PlanScore(
    Row row,
    int seasons,
    double ours,
    double knowing,
    double curve,
    List<Double> thumbs,
    double tests,
    double alsoLh,
    double untilPastFive,
    double untilProven,
    double firstAfter,
    double firstSd,
    double doses,
    long never) {

  static PlanScore of(Row row, List<PlanStudy.Bred> seasons, EggLaw law) {
    List<Double> thumbs = new ArrayList<>();
    for (Thumb thumb : Thumb.values()) {
      thumbs.add(
          mean(seasons, one -> law.share(row, dosesOf(one, thumb), one.bitch().ovulation())));
    }
    List<PlanStudy.Bred> bred =
        seasons.stream().filter(one -> !one.ours().doses().isEmpty()).toList();
    ToDoubleFunction<PlanStudy.Bred> first =
        one -> one.ours().doses().get(0).day() - one.bitch().ovulation();
    double firstAfter = mean(bred, first);
    CurveKnower curve = row.most() == 1 ? new CurveKnower(law, row) : null;
    return new PlanScore(
        row,
        seasons.size(),
        mean(seasons, one -> law.share(row, one.ours().doses(), one.bitch().ovulation())),
        mean(seasons, one -> Knower.share(law, row, one.bitch().ovulation())),
        curve == null ? Double.NaN : mean(seasons, one -> curve.share(one.bitch())),
        thumbs,
        mean(seasons, one -> one.ours().tests()),
        mean(seasons, one -> one.ours().alsoLh()),
        mean(seasons, one -> one.everySecondDay().untilPastFive()),
        mean(seasons, one -> one.everySecondDay().untilProven()),
        firstAfter,
        Math.sqrt(mean(bred, one -> Math.pow(first.applyAsDouble(one) - firstAfter, 2))),
        mean(seasons, one -> one.ours().doses().size()),
        seasons.size() - bred.size());
  }

  private static List<Given> dosesOf(PlanStudy.Bred season, Thumb thumb) {
    return season.thumbs().getOrDefault(thumb, List.of());
  }

  private static double mean(
      List<PlanStudy.Bred> seasons, ToDoubleFunction<PlanStudy.Bred> figure) {
    return seasons.parallelStream().mapToDouble(figure).boxed().toList().stream()
        .mapToDouble(Double::doubleValue)
        .average()
        .orElse(Double.NaN);
  }

  /** What our plan meets of what the knowing plan meets. */
  double ratio() {
    return ours / knowing;
  }

  boolean targetMet() {
    return ratio() >= row.target();
  }
}
