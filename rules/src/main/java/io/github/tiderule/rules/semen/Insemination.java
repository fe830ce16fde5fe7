package io.github.tiderule.rules.semen;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What a file says of one insemination and the semen for it.
 *
 * @param at when it is to be, if said
 * @param extenderTemperatureC of the extender at hand, degrees Celsius, if measured
 */
public record Insemination(
    @Nullable Instant at,
    @Nullable Ejaculate ejaculate,
    @Nullable Certificate certificate,
    @Nullable Arrival arrival,
    Wanted wanted,
    @Nullable Double extenderTemperatureC) {}
