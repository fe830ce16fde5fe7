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

  /** Whether there is a line for bitches of this mass. */
  boolean hasLine(double bodyMassKg) {
    return bodyMassKg <= value("scan.medium-up-to");
  }

  /**
   * Days from the scan to whelping; none outside the days in which the line may be read.
   *
   * @param bodyMassKg a mass that has a line
   */
  OptionalDouble daysLeft(Measured measured, double bodyMassKg) {
    boolean small = bodyMassKg <= value("scan.small-up-to");
    double days;
    if (measured.part() == Part.CAVITY) {
      days =
          small
              ? (value("scan.cavity-small-at-term") - measured.millimetres())
                  / value("scan.cavity-small-growth")
              : (value("scan.cavity-medium-at-term") - measured.millimetres())
                  / value("scan.cavity-medium-growth");
      return days >= value("scan.cavity-least-days") && days <= value("scan.cavity-most-days")
          ? OptionalDouble.of(days)
          : OptionalDouble.empty();
    }
    days =
        small
            ? (value("scan.skull-small-at-term") - measured.millimetres())
                / value("scan.skull-small-growth")
            : (value("scan.skull-medium-at-term") - measured.millimetres())
                / value("scan.skull-medium-growth");
    return days >= 0 && days <= value("scan.skull-most-days")
        ? OptionalDouble.of(days)
        : OptionalDouble.empty();
  }

  /** Likelihood of a whelping so many days after the scan. */
  double likelihood(Part part, double daysLeft, double days) {
    double sd = part == Part.CAVITY ? value("scan.cavity-sd") : value("scan.skull-sd");
    double odd = value("scan.odd");
    return (1 - odd) * Bell.density(days, daysLeft, sd) + odd / value("scan.spread");
  }
}
