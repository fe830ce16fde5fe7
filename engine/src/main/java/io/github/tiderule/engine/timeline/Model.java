package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.DoubleStream;
import org.apache.commons.csv.CSVRecord;

/** The estimator's numbers and curves, read once. Immutable. */
final class Model {

  private static final String SCOPE = "timeline";

  final PopulationCurve curve;
  final Parameters parameters;
  private final Map<String, Double> values = new HashMap<>();
  final OnsetPrior onset;
  final List<Plateau> plateaus;

  /** The courses on which the level falls early after ovulation. */
  final List<PopulationCurve> failing;

  /** Log of how much more all plateaus weigh than every third of them. */
  final double logSparsePlateaus;

  final double baselineSd;
  final double riseSd;
  final double lutealGrowth;
  final double rateSd;
  final double wideRateSd;
  final double wideRateWeight;
  private final double mostRateAfter;
  final double ratePivot;
  final double swingSd;
  final double swingDays;
  final double driftSd;
  final double driftDays;
  final double pulseSd;
  final double assayFloor;
  final double assayLeast;
  final double handlingBias;
  final double handlingSd;
  final double noisySd;
  final double kitSd;
  final double oddWeight;
  final double oddSd;
  final double plateauWeight;
  final double irregularWeight;
  final double irregularSd;
  final double irregularDays;
  final double failingWeight;
  final double noOvulationWeight;
  final double brokenOffWeight;

  /** Widths and heights of the bell a broken-off course makes. */
  final double[] brokenOffDays;

  final double[] brokenOffLevels;
  final double basal;
  final double noOvulationLevel;
  final double noOvulationSd;

  final NeutrophilChances early;
  final NeutrophilChances oestrus;
  final NeutrophilChances dioestrus;

  private final Map<Method, List<Assay>> assays;

  /** A course with a plateau before the surge, and its share among such courses. */
  record Plateau(PopulationCurve curve, double days, double logShare) {}

  Model(Parameters parameters) {
    this.parameters = parameters;
    parameters
        .of(SCOPE)
        .forEach(one -> values.put(one.id().substring(SCOPE.length() + 1), one.value()));
    onset = new OnsetPrior(parameters);
    curve = PopulationCurve.load(value("level.basal"));
    assays = Assay.load();
    assays.replaceAll(this::asLearned);
    plateaus = plateaus(curve);
    failing = failing(curve);
    double third = 0;
    for (int i = 1; i < plateaus.size(); i += 3) {
      third += Math.exp(plateaus.get(i).logShare());
    }
    logSparsePlateaus = -Math.log(third);
    early = NeutrophilChances.of("early");
    oestrus = NeutrophilChances.of("oestrus");
    dioestrus = NeutrophilChances.of("dioestrus");
    baselineSd = value("level.baseline-log-sd");
    riseSd = value("level.rise-log-sd");
    lutealGrowth = value("level.luteal-growth");
    rateSd = value("rate.log-sd");
    wideRateSd = value("rate.wide-log-sd");
    wideRateWeight = value("rate.wide-weight");
    mostRateAfter = Math.exp(value("rate.most-after"));
    ratePivot = value("rate.pivot");
    swingSd = value("swing.log-sd");
    swingDays = value("swing.days");
    driftSd = value("drift.log-sd");
    driftDays = value("drift.days");
    pulseSd = value("pulse.log-sd");
    assayFloor = value("assay.floor");
    assayLeast = value("assay.least");
    handlingBias = value("handling.log-bias");
    handlingSd = value("handling.log-sd");
    noisySd = value("noisy.log-sd");
    kitSd = value("kit.log-sd");
    oddWeight = value("odd.weight");
    oddSd = value("odd.log-sd");
    plateauWeight = value("plateau.weight");
    irregularWeight = value("irregular.weight");
    irregularSd = value("irregular.log-sd");
    irregularDays = value("irregular.days");
    failingWeight = value("failing.weight");
    noOvulationWeight = value("no-ovulation.weight");
    brokenOffWeight = value("broken-off.weight");
    brokenOffDays = new double[] {value("broken-off.short"), value("broken-off.long")};
    brokenOffLevels = levels(value("broken-off.low"), value("broken-off.high"));
    basal = value("level.basal");
    noOvulationLevel = value("no-ovulation.level");
    noOvulationSd = value("no-ovulation.log-sd");
  }

  /** Four levels, each as many times the one before. */
  private static double[] levels(double low, double high) {
    double[] levels = new double[4];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = low * Math.pow(high / low, i / (levels.length - 1.0));
    }
    return levels;
  }

  private List<PopulationCurve> failing(PopulationCurve curve) {
    double speed = value("failing.speed");
    double step = value("failing.step");
    double last = value("failing.last") + step / 2;
    return DoubleStream.iterate(value("failing.first"), days -> days < last, days -> days + step)
        .mapToObj(days -> curve.falling(days, speed))
        .toList();
  }

  private static List<Plateau> plateaus(PopulationCurve curve) {
    List<CSVRecord> rows = Parameters.plateaus().rows();
    double sum = rows.stream().mapToDouble(row -> number(row, "weight")).sum();
    return rows.stream()
        .parallel()
        .map(
            row ->
                new Plateau(
                    curve.withRest(number(row, "days"), number(row, "ngPerMl")),
                    number(row, "days"),
                    Math.log(number(row, "weight") / sum)))
        .toList();
  }

  private static double number(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }

  /**
   * The value of {@code timeline.<name>}.
   *
   * @throws IllegalArgumentException if there is no such parameter
   */
  double value(String name) {
    Double value = values.get(name);
    if (value == null) {
      throw new IllegalArgumentException("no parameter " + SCOPE + "." + name);
    }
    return value;
  }

  /** Speed after the crossing of a course that comes up to it at some speed. */
  double rateAfter(double rate) {
    return Math.min(Math.max(rate, 1 / mostRateAfter), mostRateAfter);
  }

  /** Prior weight of the ordinary course. */
  double ordinaryWeight() {
    return 1
        - plateauWeight
        - irregularWeight
        - failingWeight
        - brokenOffWeight
        - noOvulationWeight;
  }

  /** Prior weights of the courses on which she ovulates, in the order of {@link CourseWeights}. */
  double[] courseWeights() {
    return new double[] {ordinaryWeight(), plateauWeight, irregularWeight, failingWeight};
  }

  /** The ways a method may read, or the one that was learned for its laboratory. */
  private List<Assay> asLearned(Method method, List<Assay> published) {
    if (!LearnedScale.LOG_SD.containsKey(method)) {
      return published;
    }
    double logSd = parameters.value(LearnedScale.logSdOf(method));
    return logSd > 0
        ? List.of(Assay.learned(parameters.value(LearnedScale.factorOf(method)), logSd, published))
        : published;
  }

  /** The ways a method may read, at least one. */
  List<Assay> assays(Method method) {
    return Objects.requireNonNull(assays.get(method), () -> "no assay figures for " + method);
  }
}
