package io.github.tiderule.engine.insemination;

import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.semen.FrozenUnit;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The semen there is, all of it together.
 *
 * @param volumeMl millilitres, if measured
 * @param sperm millions, motile or not, if known
 * @param progressivelyMotilePercent 0–100, if known
 * @param normalPercent 0–100, if known
 * @param usable millions, if all of the above are known
 * @param units straws, vials or pellets; absent for other semen
 * @param lines the reckoning
 * @param missing what keeps the usable sperm from being known
 */
public record SemenInHand(
    Semen semen,
    @Nullable Double volumeMl,
    @Nullable Span sperm,
    @Nullable Double progressivelyMotilePercent,
    @Nullable Double normalPercent,
    @Nullable Span usable,
    @Nullable Units units,
    List<Amount> lines,
    List<Sentence> missing) {

  private static final double MILLION = 1e6;

  /**
   * What frozen semen is divided into.
   *
   * @param count at least 1
   */
  record Units(FrozenUnit unit, int count) {}

  public SemenInHand {
    lines = List.copyOf(lines);
    missing = List.copyOf(missing);
  }

  /**
   * One of so many equal doses; empty unless the sperm were counted.
   *
   * @param doses at least 1
   */
  public Optional<Dose> dose(int doses) {
    return sperm == null || !sperm.exact()
        ? Optional.empty()
        : Optional.of(
            new Dose(
                sperm.times(MILLION).over(doses).least(),
                progressivelyMotilePercent,
                normalPercent));
  }

  /** Usable sperm in one straw, vial or pellet, in millions; empty unless both are known. */
  Optional<Span> usablePerUnit() {
    return units == null || usable == null
        ? Optional.empty()
        : Optional.of(usable.over(units.count()));
  }
}
