package io.github.tiderule.engine;

import io.github.tiderule.engine.timeline.LearnedScale;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;

/**
 * What the same blood at two laboratories says of the scale of one of them: a proposal for a local
 * protocol, which a person accepts or leaves.
 *
 * @param method of the laboratory
 * @param against method of the other laboratory
 * @param outcome whether there is something to propose
 * @param factor what it reads per 1 ng/mL by radioimmunoassay
 * @param logSd spread of the log of that
 * @param used places of the pairs that counted, from 0
 * @param odd places of pairs far from the others: another sample, or a slip
 * @param low places of pairs too low to tell a scale
 * @param changes values of parameters that the proposal sets; none where nothing is proposed
 */
public record LaboratoryScale(
    Method method,
    Method against,
    Outcome outcome,
    double factor,
    double logSd,
    List<Integer> used,
    List<Integer> odd,
    List<Integer> low,
    List<Change> changes) {

  private static final double HUNDRED = 100;
  private static final double THOUSAND = 1000;

  /** Whether a scale is proposed. */
  public enum Outcome {
    PROPOSED,
    /** Fewer pairs than a scale is proposed from. */
    TOO_FEW,
    /** Beyond what a laboratory of the method may read: rather another unit, or another method. */
    BEYOND_RANGE
  }

  /**
   * One serum by two laboratories.
   *
   * @param value by the one whose scale is asked for, ng/mL, above 0
   * @param other by the one it is held against, ng/mL, above 0
   */
  public record Pair(double value, double other) {}

  /** A value of a parameter that is proposed. */
  public record Change(String parameter, double value) {}

  public LaboratoryScale {
    used = List.copyOf(used);
    odd = List.copyOf(odd);
    low = List.copyOf(low);
    changes = List.copyOf(changes);
  }

  /** Whether laboratories of a method have a scale to learn; by radioimmunoassay they have not. */
  public static boolean learns(Method method) {
    return LearnedScale.learns(method);
  }

  /**
   * The scale of a laboratory.
   *
   * @param method of the laboratory, one that {@link #learns}
   * @param against method of the other
   */
  public static LaboratoryScale of(
      Parameters parameters, Method method, Method against, List<Pair> pairs) {
    LearnedScale learned =
        LearnedScale.of(
            parameters,
            method,
            against,
            pairs.stream().map(pair -> new LearnedScale.Pair(pair.value(), pair.other())).toList());
    double factor = Math.round(Math.exp(learned.logFactor()) * HUNDRED) / HUNDRED;
    double logSd = Math.ceil(learned.logSd() * THOUSAND) / THOUSAND;
    Outcome outcome = outcome(parameters, method, learned, factor);
    return new LaboratoryScale(
        method,
        against,
        outcome,
        factor,
        logSd,
        learned.used(),
        learned.odd(),
        learned.low(),
        outcome == Outcome.PROPOSED
            ? List.of(
                new Change(LearnedScale.factorOf(method), factor),
                new Change(LearnedScale.logSdOf(method), logSd))
            : List.of());
  }

  private static Outcome outcome(
      Parameters parameters, Method method, LearnedScale learned, double factor) {
    if (learned.used().size() < parameters.value("timeline.laboratory.least-pairs")) {
      return Outcome.TOO_FEW;
    }
    Parameter usual = parameters.byId().get(LearnedScale.factorOf(method));
    return usual != null && factor >= usual.min() && factor <= usual.max()
        ? Outcome.PROPOSED
        : Outcome.BEYOND_RANGE;
  }
}
