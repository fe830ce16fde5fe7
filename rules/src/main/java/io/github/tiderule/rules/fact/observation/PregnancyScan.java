package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.Listing;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One ultrasound look at the womb.
 *
 * @param innerChorionicCavityMm inner diameters of chorionic cavities in millimetres, 1–120, one
 *     for each fetus measured; may be empty
 * @param biparietalMm biparietal diameters of skulls in millimetres, 1–120, likewise
 * @param fetuses how many were counted, 0–30, if anybody counted; none where nothing is found
 */
public record PregnancyScan(
    String id,
    Instant at,
    ScanFinding finding,
    List<Double> innerChorionicCavityMm,
    List<Double> biparietalMm,
    @Nullable Integer fetuses)
    implements Observation {

  public PregnancyScan {
    innerChorionicCavityMm = Listing.of(innerChorionicCavityMm);
    biparietalMm = Listing.of(biparietalMm);
  }

  /** What the womb shows. */
  public static PregnancyScan of(ScanFinding finding, Instant at) {
    return new PregnancyScan(UNNAMED, at, finding, List.of(), List.of(), null);
  }

  /**
   * With inner diameters of chorionic cavities.
   *
   * @param mm millimetres, 1–120, one for each fetus measured
   */
  public PregnancyScan innerChorionicCavityMm(double... mm) {
    return new PregnancyScan(
        id, at, finding, Arrays.stream(mm).boxed().toList(), biparietalMm, fetuses);
  }

  /**
   * With biparietal diameters of skulls.
   *
   * @param mm millimetres, 1–120, one for each fetus measured
   */
  public PregnancyScan biparietalMm(double... mm) {
    return new PregnancyScan(
        id, at, finding, innerChorionicCavityMm, Arrays.stream(mm).boxed().toList(), fetuses);
  }

  /**
   * With the count of fetuses.
   *
   * @param count 0–30
   */
  public PregnancyScan fetuses(int count) {
    return new PregnancyScan(id, at, finding, innerChorionicCavityMm, biparietalMm, count);
  }

  @Override
  public PregnancyScan withId(String id) {
    return new PregnancyScan(id, at, finding, innerChorionicCavityMm, biparietalMm, fetuses);
  }

  /** Whether it shows a pregnancy, alive or not. */
  public boolean shown() {
    return finding != ScanFinding.NOT_PREGNANT;
  }
}
