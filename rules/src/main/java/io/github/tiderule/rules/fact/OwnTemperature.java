package io.github.tiderule.rules.fact;

import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.Observation;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A reading of her temperature beside her own level: the mean of all readings before it.
 *
 * @param observation the reading's id
 * @param readings how many came before it, at least one
 * @param belowMean how far it lies below their mean, degrees C; negative above
 */
public record OwnTemperature(String observation, Instant at, int readings, double belowMean)
    implements Named {

  /** Every reading but the first beside those before it. */
  public static List<OwnTemperature> of(List<Observation> observations) {
    List<BodyTemperature> all =
        observations.stream()
            .filter(BodyTemperature.class::isInstance)
            .map(BodyTemperature.class::cast)
            .sorted(Comparator.comparing(BodyTemperature::at).thenComparing(BodyTemperature::id))
            .toList();
    List<OwnTemperature> own = new ArrayList<>();
    double sum = 0;
    for (int i = 0; i < all.size(); i++) {
      BodyTemperature one = all.get(i);
      if (i > 0) {
        double below = Digits.significant(sum / i - one.celsius(), 6);
        own.add(new OwnTemperature(one.id(), one.at(), i, below));
      }
      sum += one.celsius();
    }
    return List.copyOf(own);
  }

  @Override
  public String named() {
    return observation;
  }
}
