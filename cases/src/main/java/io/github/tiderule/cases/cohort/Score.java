package io.github.tiderule.cases.cohort;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * How far estimates of the day of ovulation lie from the truth.
 *
 * @param count how many estimates there are
 * @param median median absolute error, days
 * @param p90 its 90th percentile, days
 * @param bias mean error, days; positive is too late
 */
record Score(int count, double median, double p90, double bias) {

  /** Score of the engine. */
  static Score ofEngine(List<Answer> answers) {
    return of(answers.stream().mapToDouble(Answer::error).toArray());
  }

  /** Score of a rule of thumb on those seasons about which it says something. */
  static Score ofRule(List<Answer> answers, Function<Season, OptionalDouble> rule) {
    return of(
        answers.stream()
            .filter(answer -> rule.apply(answer.season()).isPresent())
            .mapToDouble(
                answer ->
                    rule.apply(answer.season()).getAsDouble() - answer.season().bitch().ovulation())
            .toArray());
  }

  /** Score of one who knows each female's whole curve. */
  static Score ofOracle(List<Season> seasons) {
    return of(
        seasons.stream()
            .mapToDouble(s -> CurveOracle.median(s.bitch()) - s.bitch().ovulation())
            .toArray());
  }

  private static Score of(double[] errors) {
    if (errors.length == 0) {
      return new Score(0, Double.NaN, Double.NaN, Double.NaN);
    }
    double[] sizes = Arrays.stream(errors).map(Math::abs).sorted().toArray();
    double bias = Arrays.stream(errors).average().orElseThrow();
    return new Score(errors.length, quantile(sizes, 0.5), quantile(sizes, 0.9), bias);
  }

  static double quantile(double[] sorted, double share) {
    double place = share * (sorted.length - 1);
    int i = Math.min((int) place, sorted.length - 2);
    return i < 0 ? sorted[0] : sorted[i] + (place - i) * (sorted[i + 1] - sorted[i]);
  }

  /** Share of answers whose 50 % interval holds the truth. */
  static double heldByHalf(List<Answer> answers) {
    return answers.stream().filter(Answer::withinHalf).count() / (double) answers.size();
  }

  /** Share of answers whose 90 % interval holds the truth. */
  static double heldByNineTenths(List<Answer> answers) {
    return answers.stream().filter(Answer::withinNineTenths).count() / (double) answers.size();
  }

  /** Mean width of the 90 % interval, days. */
  static double meanWidth(List<Answer> answers) {
    return answers.stream().mapToDouble(Answer::width).average().orElse(Double.NaN);
  }
}
