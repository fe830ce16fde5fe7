package io.github.tiderule.rules.fact.observation;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One ultrasound look at the womb.
 *
 * @param innerChorionicCavityMm inner diameters of chorionic cavities in millimetres, one for each
 *     fetus measured; may be empty
 * @param biparietalMm biparietal diameters of skulls in millimetres, likewise
 * @param fetuses how many were counted, if anybody counted
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
    innerChorionicCavityMm = List.copyOf(innerChorionicCavityMm);
    biparietalMm = List.copyOf(biparietalMm);
  }

  /** Whether it shows a pregnancy, alive or not. */
  public boolean shown() {
    return finding != ScanFinding.NOT_PREGNANT;
  }
}
