package io.github.tiderule.engine.insemination;

import io.github.tiderule.engine.advice.DosesMade;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How many doses there are in the usable sperm: usable ÷ floor of the route, rounded down; and how
 * many straws one dose takes: floor ÷ usable in one, rounded up (floors and targets: thomas-2013).
 */
public final class DoseCount {

  private static final double MILLION = 1e6;

  private DoseCount() {}

  /** The doses by route; thawed semen is reckoned for the uterus alone. Empty without a count. */
  public static List<DosesMade> of(SemenInHand inHand, Parameters parameters) {
    Span usable = inHand.usable();
    if (usable == null) {
      return List.of();
    }
    List<DosesMade> doses = new ArrayList<>();
    doses.add(
        into(
            Route.TRANSCERVICAL,
            inHand,
            usable,
            parameters.value("care.dose.intrauterine") / MILLION,
            parameters.value("care.dose.intrauterine-target") / MILLION));
    if (inHand.semen() != Semen.FROZEN) {
      doses.add(
          into(
              Route.VAGINAL,
              inHand,
              usable,
              parameters.value("care.dose.vaginal") / MILLION,
              parameters.value("care.dose.vaginal-target") / MILLION));
    }
    return List.copyOf(doses);
  }

  private static DosesMade into(
      Route route, SemenInHand inHand, Span usable, double floor, double target) {
    return new DosesMade(
        route,
        floor,
        target,
        usable.wholeAtLeast(floor),
        usable.wholeAtMost(floor),
        usable.wholeAtLeast(target),
        usable.wholeAtMost(target),
        Math.max(0, floor - usable.most()),
        inHand.usablePerUnit().map(each -> unitsFor(floor, each)).orElse(null));
  }

  /** Whole units that together reach a floor; nothing where each holds none. */
  private static @Nullable Integer unitsFor(double floor, Span each) {
    return each.least() > 0
        ? (int) Math.min(Integer.MAX_VALUE, Math.ceil(Span.of(floor).over(each.least()).least()))
        : null;
  }
}
