package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One progesterone value as the laboratory reported it.
 *
 * @param at when the blood was drawn
 * @param reportedAt when the result came, if known
 * @param value the number as printed, finite and not negative; its unit may be missing
 * @param comparator present when the value is a limit of the reportable range
 * @param statedUnit missing when nobody said it; never guessed
 * @param laboratory a name that tells laboratories apart, if known
 * @param handling what happened to the sample, without repeats, in the order of {@link Handling}
 * @param asReported the result's own words, if kept
 */
public record Progesterone(
    String id,
    Instant at,
    @Nullable Instant reportedAt,
    double value,
    @Nullable Comparator comparator,
    @Nullable Unit statedUnit,
    Method method,
    @Nullable String laboratory,
    @Nullable Specimen specimen,
    @Nullable Tube tube,
    List<Handling> handling,
    @Nullable String asReported)
    implements Observation {

  public Progesterone {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("value of " + id + " is not a concentration: " + value);
    }
    handling = handling.stream().distinct().sorted().toList();
  }

  /** Which laboratory and method this value belongs to; values of two series never share a line. */
  public Series series() {
    return Series.of(laboratory, method);
  }

  /** The value in ng/mL, or not-a-number when its unit is missing. */
  public double ngPerMl() {
    return statedUnit == null ? Double.NaN : statedUnit.toNgPerMl(value);
  }

  /** Whether the result's own words print the stated unit, which settles doubts about it. */
  public boolean unitPrinted() {
    if (statedUnit == null || asReported == null) {
      return false;
    }
    String words = asReported.toLowerCase(Locale.ROOT).replace(" ", "");
    return words.replaceAll("mcg|[µμ]g", "ug").contains(statedUnit.word().toLowerCase(Locale.ROOT));
  }
}
