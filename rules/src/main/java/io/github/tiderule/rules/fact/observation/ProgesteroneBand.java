package io.github.tiderule.rules.fact.observation;

import io.github.tiderule.rules.fact.assay.Unit;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * The band a semi-quantitative kit showed.
 *
 * @param low lower edge of the band, or absent for the lowest band
 * @param high upper edge of the band, or absent for the highest band
 * @param statedUnit missing when nobody said it
 */
public record ProgesteroneBand(
    String id, Instant at, @Nullable Double low, @Nullable Double high, @Nullable Unit statedUnit)
    implements Observation {}
