package io.github.tiderule.engine.whelping;

import io.github.tiderule.engine.timeline.Density;
import io.github.tiderule.engine.timeline.Turning;
import io.github.tiderule.engine.whelping.WhelpingEvidence.Drawn;
import io.github.tiderule.engine.whelping.WhelpingEvidence.Measured;
import io.github.tiderule.engine.whelping.WhelpingEvidence.Temperature;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * The model of whelping. The package page is its specification.
 *
 * <p>Immutable and safe for use by many threads.
 */
public final class Gestation {

  private static final int PER_DAY = 24;
  private static final double REACH = 5;

  /** Below this mean delay, days, a late breeding is not spoken of. */
  private static final double NOTABLE_DAYS = 0.05;

  private final Parameters parameters;
  private final Shifts shifts;
  private final FetalMeasures measures;
  private final LateProgesterone progesterone;

  private Gestation(Parameters parameters) {
    this.parameters = parameters;
    this.shifts = new Shifts(parameters);
    this.measures = new FetalMeasures(parameters);
    this.progesterone = LateProgesterone.of(parameters);
  }

  /** The model with the given numbers. */
  public static Gestation of(Parameters parameters) {
    return new Gestation(parameters);
  }

  /**
   * The day of whelping.
   *
   * @param whelping beginning of whelping, days after the anchor
   * @param fromShift whether it is counted from the shift of the smear, and else from ovulation
   * @param notes what moved it beside that, in words without full stops
   */
  public record Estimate(Density whelping, boolean fromShift, List<Sentence> notes) {}

  /** The posterior of whelping. */
  public Estimate estimate(WhelpingEvidence evidence) {
    List<Sentence> notes = new ArrayList<>();
    boolean fromShift = evidence.turning() != null;
    double fixed = fromShift ? 0 : fixedShift(evidence, notes);
    Points points = points(evidence);
    boolean late = meanDelay(points) >= NOTABLE_DAYS;
    if (late) {
      notes.add(Sentence.of("Bred late, so that whelping may be late as well"));
    }
    List<DoubleUnaryOperator> likelihoods = likelihoods(evidence, notes);
    double mean = value(fromShift ? "after-dioestrus" : "after-ovulation") + fixed;
    double sd = value(fromShift ? "after-dioestrus-sd" : "sd");
    boolean near = evidence.asked() >= evidence.ovulation().quantile(0.5) + value("term.from");
    if (!fromShift && !late && likelihoods.isEmpty() && fixed == 0 && !near) {
      return new Estimate(evidence.ovulation().after(mean, sd), false, List.copyOf(notes));
    }
    Density whelping = density(evidence, points, mean, sd, likelihoods);
    return new Estimate(
        near ? later(whelping, evidence.asked()) : whelping, fromShift, List.copyOf(notes));
  }

  /**
   * What is left once no pup had come by the time it is asked; all of it where so little is left
   * that she rather whelped and nobody wrote it down.
   */
  private Density later(Density whelping, double asked) {
    if (1 - whelping.cdf(asked) < value("untold")) {
      return whelping;
    }
    double step = whelping.step();
    double[] weights = new double[whelping.size()];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = whelping.at(i) > asked ? whelping.value(i) : 0;
    }
    return Density.ofWeights((int) Math.round(whelping.at(0) / step), step, weights);
  }

  /**
   * Ovulation, once she has whelped.
   *
   * @param whelped days after the anchor
   */
  public Density lookBack(WhelpingEvidence evidence, double whelped) {
    Density ovulation = evidence.ovulation();
    double[] weights = new double[ovulation.size()];
    for (int i = 0; i < weights.length; i++) {
      double at = ovulation.at(i);
      double mean = at + value("after-ovulation") + delay(evidence, at);
      weights[i] = ovulation.value(i) * Bell.density(whelped, mean, value("sd"));
    }
    double step = ovulation.step();
    double sum = 0;
    for (double one : weights) {
      sum += one;
    }
    return sum > 0
        ? Density.ofWeights((int) Math.round(ovulation.at(0) / step), step, weights)
        : ovulation;
  }

  private double value(String id) {
    return parameters.value("whelping." + id);
  }

  private double fixedShift(WhelpingEvidence evidence, List<Sentence> notes) {
    double litter = shifts.litter(evidence.pups());
    double breed = shifts.breed(evidence.breed());
    if (litter > 0) {
      notes.add(Sentence.of("A small litter is carried a little longer"));
    } else if (litter < 0) {
      notes.add(Sentence.of("A larger litter is carried a little less long"));
    }
    if (breed > 0) {
      notes.add(Sentence.of("Her breed was found to carry a little longer"));
    } else if (breed < 0) {
      notes.add(Sentence.of("Her breed was found to carry a little less long"));
    }
    return litter + breed;
  }

  /** Where ovulation, or the shift, may lie; with the delay of a late breeding at each. */
  private record Points(double[] at, double[] weight, double[] delay) {}

  private Points points(WhelpingEvidence evidence) {
    Turning turning = evidence.turning();
    Density ovulation = evidence.ovulation();
    if (turning != null) {
      // given the shift, ovulation lies a usual lag before it; a delay needs no more than that
      double lag = parameters.value("timeline.smear.dioestrus-lag");
      double[] delay = new double[turning.at().length];
      for (int i = 0; i < delay.length; i++) {
        delay[i] = delay(evidence, turning.at()[i] - lag);
      }
      return new Points(turning.at(), turning.weight(), delay);
    }
    double[] at = new double[ovulation.size()];
    double[] weight = new double[at.length];
    double[] delay = new double[at.length];
    for (int i = 0; i < at.length; i++) {
      at[i] = ovulation.at(i);
      weight[i] = ovulation.value(i) * ovulation.step();
      delay[i] = delay(evidence, at[i]);
    }
    return new Points(at, weight, delay);
  }

  private double delay(WhelpingEvidence evidence, double ovulation) {
    Double bred = evidence.firstBreeding();
    return bred == null ? 0 : shifts.late(bred - ovulation);
  }

  private static double meanDelay(Points points) {
    double sum = 0;
    for (int i = 0; i < points.delay().length; i++) {
      sum += points.weight()[i] * points.delay()[i];
    }
    return sum;
  }

  private List<DoubleUnaryOperator> likelihoods(WhelpingEvidence evidence, List<Sentence> notes) {
    List<DoubleUnaryOperator> all = new ArrayList<>();
    measured(evidence, all, notes);
    double term = evidence.ovulation().quantile(0.5) + value("term.from");
    List<Temperature> readings =
        evidence.temperatures().stream().filter(reading -> reading.day() >= term).toList();
    @Nullable TemperatureFall fall = TemperatureFall.in(readings, parameters);
    if (fall != null) {
      all.add(whelping -> fall.likelihood(whelping, parameters));
      notes.add(
          Sentence.of("Her temperature fell: whelping followed such a fall by 13 to 33 hours"));
    }
    List<Sentence> told = new ArrayList<>();
    for (Drawn drawn : evidence.progesterone()) {
      if (drawn.day() >= term && drawn.high() > 0) {
        all.add(
            w ->
                progesterone.likelihood(
                    drawn.method(), w - drawn.day(), drawn.low(), drawn.high()));
        told.add(
            drawn.low() >= value("progesterone.within-two-days")
                ? Sentence.of(
                    "Progesterone has not fallen far: whelping is less likely, not ruled out")
                : Sentence.of("Progesterone has fallen: whelping is near"));
      }
    }
    if (!told.isEmpty()) {
      notes.add(told.get(told.size() - 1));
    }
    if (evidence.stillPregnant() >= term || evidence.firstPup() < Double.POSITIVE_INFINITY) {
      all.add(w -> w > evidence.stillPregnant() && w <= evidence.firstPup() ? 1 : 0);
    }
    return all;
  }

  private void measured(
      WhelpingEvidence evidence, List<DoubleUnaryOperator> all, List<Sentence> notes) {
    @Nullable Double mass = evidence.bodyMassKg();
    if (evidence.measured().isEmpty()) {
      return;
    }
    if (mass == null) {
      notes.add(Sentence.of("The scan's measurements are not used: they need her body mass"));
      return;
    }
    List<DoubleUnaryOperator> read = new ArrayList<>();
    for (Measured one : evidence.measured()) {
      OptionalDouble left = measures.daysLeft(one, mass);
      if (left.isEmpty()) {
        notes.add(Sentence.of("A measurement of the scan lies outside what its line can read"));
        continue;
      }
      double days = left.getAsDouble();
      read.add(w -> measures.likelihood(one.part(), days, w - one.day()));
      notes.add(
          Sentence.of(
              one.part() == WhelpingEvidence.Part.CAVITY
                  ? "The scan's chorionic cavity of {} mm left about {:whole} days"
                  : "The scan's skull width of {} mm left about {:whole} days",
              Part.figure(Math.round(10 * one.millimetres()) / 10.0),
              days));
    }
    // what is measured of one litter errs together
    double share = 1 / (1 + (read.size() - 1) * value("scan.shared"));
    read.forEach(one -> all.add(w -> Math.pow(one.applyAsDouble(w), share)));
  }

  private static Density density(
      WhelpingEvidence evidence,
      Points points,
      double mean,
      double sd,
      List<DoubleUnaryOperator> likelihoods) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < points.at().length; i++) {
      low = Math.min(low, points.at()[i] + points.delay()[i]);
      high = Math.max(high, points.at()[i] + points.delay()[i]);
    }
    int first = (int) Math.floor((low + mean - REACH * sd) * PER_DAY);
    double last = Math.max(high + mean + REACH * sd, evidence.stillPregnant() + 1);
    double[] prior = new double[(int) Math.ceil(last * PER_DAY) - first + 1];
    double[] weights = new double[prior.length];
    double sum = 0;
    for (int j = 0; j < prior.length; j++) {
      double at = (first + j) / (double) PER_DAY;
      for (int i = 0; i < points.at().length; i++) {
        if (points.weight()[i] > 0) {
          double middle = points.at()[i] + points.delay()[i] + mean;
          prior[j] += points.weight()[i] * Bell.density(at, middle, sd);
        }
      }
      weights[j] = prior[j];
      for (DoubleUnaryOperator likelihood : likelihoods) {
        weights[j] *= likelihood.applyAsDouble(at);
      }
      sum += weights[j];
    }
    // where all that was seen contradicts the law beyond what a double holds, the law stands
    return Density.ofWeights(first, 1.0 / PER_DAY, sum > 0 ? weights : prior);
  }
}
