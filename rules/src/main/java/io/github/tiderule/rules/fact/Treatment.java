package io.github.tiderule.rules.fact;

import java.time.LocalDate;

/**
 * A treatment she was given.
 *
 * @param on not after the moment of the advice
 */
public record Treatment(TreatmentKind kind, LocalDate on) {}
