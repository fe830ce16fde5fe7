package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Listing;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One progesterone value as the laboratory reported it: {@code Progesterone.of(3.2,
 * Unit.NG_PER_ML).drawn(at).method(Method.CLIA).laboratory("A")}.
 *
 * @param at when the blood was drawn
 * @param reportedAt when the result came, not before {@code at}, if known
 * @param value the number as printed, 0–10 000 in the stated unit, which may be missing
 * @param comparator present when the value is a limit of the reportable range
 * @param statedUnit missing when nobody said it; never guessed
 * @param laboratory a name that tells laboratories apart, at most 120 characters, if known
 * @param handling what happened to the sample, without repeats, in the order of {@link Handling}
 * @param asReported the result's own words, at most 200 characters, if kept
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
    handling = Listing.sorted(handling);
  }

  /**
   * A result that says nothing yet of its sample.
   *
   * @param value 0–10 000, in {@code unit}
   */
  public static Result of(double value, Unit unit) {
    return new Result(value, null, unit);
  }

  /**
   * A result whose unit nobody said: it is held and asked about, never guessed.
   *
   * @param value 0–10 000, in whatever unit it is
   */
  public static Result withoutUnit(double value) {
    return new Result(value, null, null);
  }

  /** A result below the reportable range, printed as {@code <0.2}. */
  public static Result below(double limit, Unit unit) {
    return new Result(limit, Comparator.BELOW, unit);
  }

  /** A result above the reportable range, printed as {@code >40}. */
  public static Result above(double limit, Unit unit) {
    return new Result(limit, Comparator.ABOVE, unit);
  }

  /**
   * What the laboratory printed, without the moment the blood was drawn.
   *
   * @param value 0–10 000, in the unit; above 0 where it is a lower limit
   */
  public record Result(double value, @Nullable Comparator comparator, @Nullable Unit unit) {

    /** The value of blood drawn at a moment, by a method and in a laboratory nobody named. */
    public Progesterone drawn(Instant at) {
      return new Progesterone(
          UNNAMED,
          at,
          null,
          value,
          comparator,
          unit,
          Method.UNKNOWN,
          null,
          null,
          null,
          List.of(),
          null);
    }
  }

  @Override
  public Progesterone withId(String id) {
    return with(id, reportedAt, method, laboratory, specimen, tube, handling, asReported);
  }

  /** With the moment the result came, not before the blood was drawn. */
  public Progesterone reportedAt(Instant moment) {
    return with(id, moment, method, laboratory, specimen, tube, handling, asReported);
  }

  /** With the method it was measured by. */
  public Progesterone method(Method measuredBy) {
    return with(id, reportedAt, measuredBy, laboratory, specimen, tube, handling, asReported);
  }

  /**
   * With the laboratory's name.
   *
   * @param name at most 120 characters; the same for all its values
   */
  public Progesterone laboratory(String name) {
    return with(id, reportedAt, method, name, specimen, tube, handling, asReported);
  }

  /** With what was measured. */
  public Progesterone specimen(Specimen measured) {
    return with(id, reportedAt, method, laboratory, measured, tube, handling, asReported);
  }

  /** With what the blood was drawn into. */
  public Progesterone tube(Tube drawnInto) {
    return with(id, reportedAt, method, laboratory, specimen, drawnInto, handling, asReported);
  }

  /** With all that happened to the sample. */
  public Progesterone handling(Handling... happened) {
    List<Handling> all = Arrays.asList(happened);
    return with(id, reportedAt, method, laboratory, specimen, tube, all, asReported);
  }

  /**
   * With the result's own words.
   *
   * @param words at most 200 characters
   */
  public Progesterone asReported(String words) {
    return with(id, reportedAt, method, laboratory, specimen, tube, handling, words);
  }

  private Progesterone with(
      String newId,
      @Nullable Instant newReportedAt,
      Method newMethod,
      @Nullable String newLaboratory,
      @Nullable Specimen newSpecimen,
      @Nullable Tube newTube,
      List<Handling> newHandling,
      @Nullable String newAsReported) {
    return new Progesterone(
        newId,
        at,
        newReportedAt,
        value,
        comparator,
        statedUnit,
        newMethod,
        newLaboratory,
        newSpecimen,
        newTube,
        newHandling,
        newAsReported);
  }

  /** Which laboratory and method this value belongs to; values of two series never share a line. */
  public Series series() {
    return Series.of(laboratory, method);
  }

  /** The value in ng/mL, or not-a-number when its unit is missing. */
  public double ngPerMl() {
    return statedUnit == null ? Double.NaN : statedUnit.toNgPerMl(value);
  }

  /** The value in ng/mL if it were in the other unit; not-a-number when its unit is missing. */
  public double otherNgPerMl() {
    return statedUnit == null ? Double.NaN : statedUnit.other().toNgPerMl(value);
  }

  /** Whether it is stated in nmol/L. */
  public boolean inNmol() {
    return statedUnit == Unit.NMOL_PER_L;
  }

  /** The value in ng/mL if its point were lost: a tenth of it. */
  public double tenthNgPerMl() {
    return ngPerMl() / 10;
  }

  /** The value in ng/mL if its point stood one place too far left: ten times it. */
  public double tenfoldNgPerMl() {
    return ngPerMl() * 10;
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
