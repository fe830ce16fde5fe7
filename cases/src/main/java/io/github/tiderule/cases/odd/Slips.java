package io.github.tiderule.cases.odd;

import io.github.tiderule.cases.cohort.Draws;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Progesterone;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The slips of one season: which value is not what was measured, and what is typed in its place.
 */
final class Slips {

  private static final double RAISED = 3;
  private static final double LIMIT = 0.2;

  private final Kind kind;
  private final Draws draws;
  private final double from;
  private final boolean atOnce;
  private int made;

  Slips(Truth truth, Draws draws) {
    kind = truth.kind();
    this.draws = draws;
    from = truth.ovulation() + draws.uniform(-4, 2);
    atOnce = draws.chance(0.5);
  }

  /**
   * What is typed for a value.
   *
   * @param before the value before it in ng/mL, as it was measured
   * @return null where it is typed as it was measured
   */
  @Nullable Progesterone typed(Progesterone measured, double day, double before) {
    boolean due =
        switch (kind) {
          case LIMIT_AFTER_RISE -> made == 0 && before >= RAISED;
          case TWO_ODD_VALUES -> made == 0 ? day >= from : made == 1 && (atOnce || day >= from + 3);
          default -> made == 0 && day >= from;
        };
    if (!kind.slippedValue() || !due) {
      return null;
    }
    made++;
    double value = measured.value();
    return switch (kind) {
      case LIMIT_AFTER_RISE ->
          draws.chance(0.5)
              ? with(measured, LIMIT, Comparator.BELOW, Unit.NG_PER_ML)
              : with(measured, 0, null, Unit.NG_PER_ML);
      case NG_TYPED_AS_NMOL -> with(measured, value, measured.comparator(), Unit.NMOL_PER_L);
      case NMOL_TYPED_AS_NG -> with(measured, value, measured.comparator(), Unit.NG_PER_ML);
      case MOVED_POINT ->
          with(
              measured, rounded(draws.chance(0.7) ? value * 10 : value / 10), null, Unit.NG_PER_ML);
      default -> {
        double times = StrictMath.exp(draws.uniform(0.9, 1.7));
        yield with(
            measured,
            rounded(draws.chance(0.5) ? value * times : value / times),
            null,
            Unit.NG_PER_ML);
      }
    };
  }

  private static double rounded(double value) {
    return Math.round(value * 100) / 100.0;
  }

  /** The same drawing with another number. */
  static Progesterone with(
      Progesterone drawing, double value, @Nullable Comparator comparator, Unit unit) {
    Progesterone other =
        new Progesterone.Result(value, comparator, unit)
            .drawn(drawing.at())
            .withId(drawing.id())
            .method(drawing.method());
    String laboratory = drawing.laboratory();
    return laboratory == null ? other : other.laboratory(laboratory);
  }

  /** First blood as it is typed. */
  static FirstBlood typed(Kind kind, LocalDate noted, Draws draws) {
    return FirstBlood.seen(
        switch (kind) {
          case BLOOD_MONTH -> draws.chance(0.8) ? noted.minusMonths(1) : noted.plusMonths(1);
          case BLOOD_YEAR -> noted.minusYears(1);
          case BLOOD_EXCHANGED -> exchanged(noted);
          default -> noted;
        });
  }

  /** Whether day and month can be exchanged, to another day. */
  static boolean exchangeable(LocalDate day) {
    return day.getDayOfMonth() <= 12 && day.getDayOfMonth() != day.getMonthValue();
  }

  private static LocalDate exchanged(LocalDate day) {
    return LocalDate.of(day.getYear(), day.getDayOfMonth(), day.getMonthValue());
  }
}
