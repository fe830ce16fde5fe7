package io.github.tiderule.engine.whelping;

import io.github.tiderule.engine.whelping.WhelpingEvidence.Measured;
import io.github.tiderule.engine.whelping.WhelpingEvidence.Part;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.OptionalDouble;

/** Days left to whelping from fetal measurements, by straight lines for her size. */
final class FetalMeasures {

  private final Parameters parameters;

  FetalMeasures(Parameters parameters) {
    this.parameters = parameters;
  }

  private double value(String id) {
    return parameters.value("whelping." + id);
  }

  /**
   * Days from the scan to whelping; none outside the days in which the line may be read.
   *
   * @param bodyMassKg by which her line is chosen
   */
  OptionalDouble daysLeft(Measured measured, double bodyMassKg) {
    boolean cavity = measured.part() == Part.CAVITY;
    Line line = cavity ? cavity(bodyMassKg) : skull(bodyMassKg);
    double days = (line.atTerm() - measured.millimetres()) / line.growth();
    double least = cavity ? value("scan.cavity-least-days") : 0;
    double most = value(cavity ? "scan.cavity-most-days" : "scan.skull-most-days");
    return days >= least && days <= most ? OptionalDouble.of(days) : OptionalDouble.empty();
  }

  /**
   * Growth in a straight line.
   *
   * @param atTerm millimetres that it reaches at whelping
   * @param growth millimetres a day
   */
  private record Line(double atTerm, double growth) {}

  private Line cavity(double kg) {
    return kg <= value("scan.small-up-to")
        ? new Line(value("scan.cavity-small-at-term"), value("scan.cavity-small-growth"))
        : kg <= value("scan.medium-up-to")
            ? new Line(value("scan.cavity-medium-at-term"), value("scan.cavity-medium-growth"))
            : new Line(value("scan.cavity-large-at-term"), value("scan.cavity-large-growth"));
  }

  private Line skull(double kg) {
    return kg <= value("scan.small-up-to")
        ? new Line(value("scan.skull-small-at-term"), value("scan.skull-small-growth"))
        : kg <= value("scan.medium-up-to")
            ? new Line(value("scan.skull-medium-at-term"), value("scan.skull-medium-growth"))
            : new Line(value("scan.skull-large-at-term"), value("scan.skull-large-growth"));
  }

  /** Likelihood of a whelping so many days after a scan whose line left so many. */
  double likelihood(Part part, double daysLeft, double days) {
    double odd = value("scan.odd");
    return (1 - odd) * Bell.density(days, daysLeft, sd(part, daysLeft))
        + odd / value("scan.spread");
  }

  private double sd(Part part, double daysLeft) {
    if (part == Part.CAVITY) {
      return value(
          daysLeft >= value("scan.early-days") ? "scan.cavity-early-sd" : "scan.cavity-sd");
    }
    return value(daysLeft < value("scan.late-days") ? "scan.skull-late-sd" : "scan.skull-sd");
  }
}
