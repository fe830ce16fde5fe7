package io.github.tiderule.engine.advice.course;

import java.time.OffsetDateTime;

/** Posterior quantiles of an instant. */
public record Quantiles(
    OffsetDateTime median,
    OffsetDateTime p05,
    OffsetDateTime p25,
    OffsetDateTime p75,
    OffsetDateTime p95) {}
