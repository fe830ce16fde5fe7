package io.github.tiderule.format.cycle;

import io.github.tiderule.rules.fact.assay.Unit;
import java.util.Locale;
import java.util.Optional;

/** Units as people and laboratories write them. */
public final class UnitSpelling {

  private UnitSpelling() {}

  /**
   * The unit a text spells. Only another spelling of the same unit counts: a near miss of letters
   * can be a factor of a hundred.
   */
  public static Optional<Unit> of(String text) {
    String plain =
        text.replace(" ", "")
            .toLowerCase(Locale.ROOT)
            .replace('\u00B5', 'u')
            .replace('\u03BC', 'u')
            .replace("mcg", "ug");
    for (Unit unit : Unit.values()) {
      if (unit.word().toLowerCase(Locale.ROOT).equals(plain)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }
}
