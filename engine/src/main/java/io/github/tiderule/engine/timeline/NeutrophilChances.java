package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** The chances of no, few and many neutrophils in a smear of one phase of the season. */
final class NeutrophilChances {

  private final Map<Neutrophils, Double> chances = new EnumMap<>(Neutrophils.class);

  private NeutrophilChances(CSVRecord row) {
    for (Neutrophils seen : Neutrophils.values()) {
      chances.put(seen, Double.parseDouble(row.get(seen.word())));
    }
  }

  /**
   * The chances of one phase.
   *
   * @throws IllegalStateException if the table has no such phase
   */
  static NeutrophilChances of(String phase) {
    return Parameters.neutrophils().rows().stream()
        .filter(row -> row.get("phase").equals(phase))
        .findFirst()
        .map(NeutrophilChances::new)
        .orElseThrow(() -> new IllegalStateException("no chances of neutrophils in " + phase));
  }

  /** Chance of what was seen; 1 where nobody looked. */
  double of(@Nullable Neutrophils seen) {
    return seen == null ? 1 : Objects.requireNonNull(chances.get(seen));
  }
}
