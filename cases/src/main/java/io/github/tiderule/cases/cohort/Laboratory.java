package io.github.tiderule.cases.cohort;

import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Progesterone;
import org.jspecify.annotations.Nullable;

/**
 * One laboratory with one method: reads as scale·(intercept + slope·truth), with a coefficient of
 * variation by level, a reportable range and a number of decimals.
 *
 * <p>Lines from assay-2020 and nothling-2019, coefficients of variation from pocassay-2021; scales
 * and reportable ranges are this generator's own.
 */
public record Laboratory(
    String name,
    Method method,
    double intercept,
    double slope,
    double scale,
    double cvBelow3,
    double cvTo10,
    double cvAbove10,
    double least,
    double most,
    int decimals) {

  /** Share of results that are grossly wrong: another animal's tube, a slip of the pen. */
  private static final double GROSS = 0.01;

  /** Scale of the pulses within a day, on the log; their tails are Student's with 5 degrees. */
  private static final double PULSE = 0.07;

  /** A big laboratory or a clinic's own reader, as they come. */
  public static Laboratory any(String name, Draws draws) {
    return switch (draws.pick(0.35, 0.30, 0.25, 0.10)) {
      case 0 -> eclia(name, draws);
      case 1 -> clia(name, draws);
      case 2 -> pointOfCare(name, draws);
      default -> ria(name, draws);
    };
  }

  static Laboratory ria(String name, Draws draws) {
    double scale = draws.logNormal(1, 0.06);
    return new Laboratory(name, Method.RIA, 0, 1, scale, 0.08, 0.07, 0.07, 0.1, 60, 2);
  }

  static Laboratory eclia(String name, Draws draws) {
    double scale = draws.logNormal(1, 0.07);
    return new Laboratory(name, Method.ECLIA, -0.23, 1.06, scale, 0.05, 0.04, 0.04, 0.05, 60, 2);
  }

  static Laboratory clia(String name, Draws draws) {
    boolean low = draws.chance(0.35);
    double scale = draws.logNormal(1, 0.08);
    return new Laboratory(
        name,
        Method.CLIA,
        low ? 0.16 : 0,
        low ? 0.45 : 0.85,
        scale,
        0.06,
        0.05,
        0.05,
        0.2,
        40,
        draws.chance(0.5) ? 1 : 2);
  }

  static Laboratory pointOfCare(String name, Draws draws) {
    double scale = draws.logNormal(1, 0.15);
    Method method = draws.chance(0.5) ? Method.FLUORESCENCE : Method.DRY_SLIDE;
    return new Laboratory(name, method, 0, 1, scale, 0.13, 0.10, 0.07, 0.2, 20, 1);
  }

  /** The laboratory's report on blood drawn on a day. */
  public Progesterone measure(String id, double day, Bitch bitch, Draws draws) {
    double blood = bitch.p4At(day) * Math.exp(PULSE * draws.t5());
    if (draws.chance(GROSS)) {
      blood *= Math.exp(draws.uniform(-1.4, 1.4));
    }
    return read(id, day, blood, draws);
  }

  /** The laboratory's report on blood drawn on a day that holds so much, ng/mL. */
  public Progesterone read(String id, double day, double blood, Draws draws) {
    double line = Math.max(intercept + slope * blood, 0.2 * blood);
    double cv = line < 3 ? cvBelow3 : line < 10 ? cvTo10 : cvAbove10;
    double read = scale * line * (1 + cv * draws.normal(0, 1)) + draws.normal(0, 0.03);
    double unit = Math.pow(10, decimals);
    double printed = Math.round(read * unit) / unit;
    if (!(printed >= least)) {
      return report(id, day, least, Comparator.BELOW);
    }
    return printed > most
        ? report(id, day, most, Comparator.ABOVE)
        : report(id, day, printed, null);
  }

  private Progesterone report(
      String id, double day, double value, @Nullable Comparator comparator) {
    return new Progesterone.Result(value, comparator, Unit.NG_PER_ML)
        .drawn(Calendar.instant(day))
        .withId(id)
        .method(method)
        .laboratory(name);
  }
}
